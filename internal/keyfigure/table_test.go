package keyfigure

import (
	"math"
	"testing"

	"tuckline/internal/scenario"
)

// printed is a figure of the demo inputs table: value and half of its last printed digit.
type printed struct {
	group, name string
	want, half  float64
}

// source: demo inputs table, arithmetic. Every figure must agree within its rounding.
var demoTable = map[string]struct {
	scenario *scenario.Scenario
	figures  []printed
}{
	"A": {lowmere(), []printed{
		{"blister machine", "set rate", 240, 0.5},
		{"blister machine", "set rate at the count", 80, 0.5},
		{"blister machine", "web speed", 7.92, 0.005},
		{"blister machine", "lidding foil: lasts", 308, 0.5},
		{"blister machine", "tablets: use", 2400, 0.5},
		{"blister machine", "tablets: lasts", 33, 0.5},
		{"blister machine", "dwell at set speed", 0.45, 0.005},
		{"blister machine", "minor stop: every", 25, 0.5},
		{"blister machine", "breakdown: every", 480, 0.5},
		{"cartoner", "top rate", 100, 0.5},
		{"cartoner", "carton blanks: lasts", 25, 0.5},
		{"cartoner", "leaflets: lasts", 10, 0.5},
		{"print-and-check", "set rate at the count", 110, 0.5},
		{"tamper label", "set rate at the count", 115, 0.5},
		{"bundler", "set rate at the count", 120, 0.5},
		{"case packer", "set rate at the count", 125, 0.5},
		{"transfer belt", "transit", 20, 0.5},
		{"transfer belt", "on the way at set speed", 80, 0.5},
		{"transfer belt", "places", 129, 0.5},
		{"transfer belt", "usable", 49, 0.5},
		{"transfer belt", "usable for", 12, 0.5},
	}},
	"B": {tarnHollow(36, 72), []printed{
		{"blister machine", "set rate", 144, 0.5},
		{"blister machine", "set rate at the count", 72, 0.5},
		{"blister machine", "web speed", 6.91, 0.005},
		{"blister machine", "forming foil: lasts", 201, 0.5},
		{"blister machine", "lidding foil: lasts", 353, 0.5},
		{"blister machine", "tablets: use", 2016, 0.5},
		{"blister machine", "tablets: lasts", 91, 0.5},
		{"blister machine", "dwell at set speed", 0.75, 0.005},
		{"blister machine", "allowed speed to", 40.9, 0.05},
		{"blister machine", "minor stop: every", 19.4, 0.05},
		{"blister machine", "breakdown: every", 400, 0.5},
		{"cartoner", "carton blanks: lasts", 16.7, 0.05},
		{"cartoner", "leaflets: lasts", 11.1, 0.05},
		{"bundler", "set rate at the count", 108, 0.5},
		{"case packer", "set rate at the count", 110.4, 0.05},
		{"transfer belt", "transit", 20, 0.5},
		{"transfer belt", "on the way at set speed", 48, 0.5},
		{"transfer belt", "places", 62, 0.5},
		{"transfer store", "minutes of flow", 5, 0.05},
		{"transfer store", "empty after", 20, 0.5},
	}},
	"B at 42": {tarnHollow(42, 84), []printed{
		{"blister machine", "set rate", 168, 0.5},
		{"blister machine", "web speed", 8.06, 0.005},
		{"blister machine", "forming foil: lasts", 172, 0.5},
		{"blister machine", "lidding foil: lasts", 303, 0.5},
		{"blister machine", "tablets: use", 2352, 0.5},
		{"blister machine", "tablets: lasts", 78, 0.5},
		{"blister machine", "dwell at set speed", 0.643, 0.0005},
		{"cartoner", "carton blanks: lasts", 14.3, 0.05},
		{"cartoner", "leaflets: lasts", 9.5, 0.05},
		{"transfer belt", "on the way at set speed", 56, 0.5},
		{"transfer belt", "usable", 6, 0.5},
		{"transfer belt", "usable for", 2, 0.5},
		{"transfer store", "minutes of flow", 4.3, 0.05},
		{"transfer store", "empty after", 60, 0.5},
	}},
	"C merged": {merged(), []printed{
		{"blister machine 1", "set rate", 150, 0.5},
		{"blister machine 2", "web speed", 2.9, 0.05},
		{"blister machine 1", "lidding foil: lasts", 841, 0.5},
		{"blister machine 1", "capsules: use", 1500, 0.5},
		{"blister machine 1", "capsules: lasts", 30, 0.5},
		{"blister machine 1", "dwell at set speed", 0.54, 0.005},
		{"blister machine 1", "minor stop: every", 25, 0.5},
		{"blister machine 1", "breakdown: every", 480, 0.5},
		{"cartoner", "carton blanks: lasts", 26.7, 0.05},
		{"store", "feed at set speed", 300, 0.5},
		{"store", "minutes of flow", 4, 0.5},
	}},
	"C wide": {wide(), []printed{
		{"blister machine", "set rate", 300, 0.5},
		{"blister machine", "web speed", 5.8, 0.05},
		{"blister machine", "forming foil: lasts", 190, 0.5},
		{"blister machine", "lidding foil: lasts", 421, 0.5},
		{"blister machine", "capsules: use", 3000, 0.5},
		{"blister machine", "capsules: lasts", 15, 0.5},
		{"blister machine", "minor stop: every", 18, 0.5},
		{"blister machine", "breakdown: every", 420, 0.5},
		{"cartoner", "top speed", 180, 0.5},
	}},
}

func TestFiguresAgreeWithTheDemoTable(t *testing.T) {
	for name, line := range demoTable {
		t.Run(name, func(t *testing.T) {
			got := lookup(Derive(line.scenario))
			for _, p := range line.figures {
				value, ok := got[p.group+"/"+p.name]
				if !ok || math.Abs(value-p.want) > p.half {
					t.Errorf("%s, %s: got %v (there: %v), the table has %v ± %v", p.group, p.name, value, ok, p.want, p.half)
				}
			}
		})
	}
}

func lookup(f Figures) map[string]float64 {
	found := map[string]float64{}
	for _, row := range f.List() {
		found[row.Group+"/"+row.Name] = row.Value
	}
	return found
}

// The demo table divides lengths that it has rounded to 10 m. Held against the
// same rounded length, minutes and pieces agree within the printed digit.
// Source: demo inputs table, arithmetic.
func TestFormingReelsAgreeWithTheDemoTable(t *testing.T) {
	tests := map[string]struct {
		scenario                 *scenario.Scenario
		usable, blisters         float64
		minutes, halfOfTheMinute float64
	}{
		"A":        {lowmere(), 1100, 33333, 138.9, 0.05},
		"B":        {tarnHollow(36, 72), 1390, 28958, 201, 0.5},
		"C merged": {merged(), 1100, 56897, 379, 0.5},
		"C wide":   {wide(), 1100, 56897, 190, 0.5},
	}
	for name, test := range tests {
		m := Derive(test.scenario).Stations[0].Materials[0]
		scale := test.usable / m.Amount
		if math.Abs(m.Amount-test.usable) > 5 {
			t.Errorf("%s: usable %v m, the table has %v", name, m.Amount, test.usable)
		}
		if math.Abs(m.Minutes*scale-test.minutes) > test.halfOfTheMinute {
			t.Errorf("%s: %v min on %v m, the table has %v", name, m.Minutes*scale, test.usable, test.minutes)
		}
		if math.Abs(m.Pieces*scale-test.blisters) > 0.5 {
			t.Errorf("%s: %v blisters on %v m, the table has %v", name, m.Pieces*scale, test.usable, test.blisters)
		}
	}
}

// Lidding reels: 2,440 m usable in all lines. Source: demo inputs table.
func TestLiddingReelsAgreeWithTheDemoTable(t *testing.T) {
	for name, s := range map[string]*scenario.Scenario{"A": lowmere(), "B": tarnHollow(36, 72), "C": merged()} {
		if m := Derive(s).Stations[0].Materials[1]; math.Abs(m.Amount-2440) > 5 {
			t.Errorf("%s: usable %v m, the table has 2,440", name, m.Amount)
		}
	}
}

// Source: geometry of a wound reel, core 76 mm; lengths as printed in the
// trade notes (common practice, no source beyond the formula).
func TestReelLength(t *testing.T) {
	tests := []struct{ outer, microns, want, half float64 }{
		{400, 250, 485, 0.5},
		{500, 250, 767, 0.5},
		{600, 250, 1113, 0.5},
		{500, 300, 639, 0.5},
		{600, 300, 927, 0.5},
		{400, 137, 884, 0.5},
		{500, 137, 1400, 0.5},
		{250, 27, 1650, 5},
		{300, 27, 2450, 5},
	}
	for _, test := range tests {
		got := ReelLength(test.outer/1e3, 0.076, test.microns/1e6)
		if math.Abs(got-test.want) > test.half {
			t.Errorf("%v mm, %v µm: got %v m, want %v ± %v", test.outer, test.microns, got, test.want, test.half)
		}
	}
	for _, wrong := range [][3]float64{{0.6, 0.076, 0}, {0.07, 0.076, 1e-4}, {0, 0, 0}} {
		if got := ReelLength(wrong[0], wrong[1], wrong[2]); got != 0 {
			t.Errorf("%v: got %v, want 0", wrong, got)
		}
	}
}

// Over-speed of the cartoner: 25 % today, 7.1 % after the speed-up; 20 % in C.
// Source: demo inputs table, arithmetic.
func TestOverSpeedAgreesWithTheDemoTable(t *testing.T) {
	for name, test := range map[string]struct {
		scenario   *scenario.Scenario
		stage      int
		want, half float64
	}{
		"A": {lowmere(), 1, 25, 0.5}, "B": {tarnHollow(36, 72), 1, 25, 0.5},
		"B at 42": {tarnHollow(42, 84), 1, 7.1, 0.05}, "C merged": {merged(), 1, 20, 0.5},
	} {
		if got := 100 * Derive(test.scenario).Stages[test.stage].OverSpeed; math.Abs(got-test.want) > test.half {
			t.Errorf("%s: over-speed %v %%, the table has %v", name, got, test.want)
		}
	}
}
