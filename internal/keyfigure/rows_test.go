package keyfigure

import (
	"encoding/json"
	"io"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// Every row can be written as JSON, has a text, and a name that is unique in its group.
func TestRowsCanBeWritten(t *testing.T) {
	for _, s := range []*scenario.Scenario{lowmere(), tarnHollow(42, 84), merged(), wide()} {
		rows := Derive(s).List()
		if _, err := json.Marshal(rows); err != nil {
			t.Error(err)
		}
		seen := map[string]bool{}
		for _, row := range rows {
			key := row.Group + "/" + row.Name
			if seen[key] || row.Text == "" || math.IsNaN(row.Value) || math.IsInf(row.Value, 0) {
				t.Errorf("%s: %+v (seen before: %v)", key, row, seen[key])
			}
			seen[key] = true
		}
	}
}

func TestRowsOfRandomLinesAreFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if _, err := json.Marshal(Derive(randomLine(t)).List()); err != nil {
			t.Fatal(err)
		}
	})
}

// Scenarios that no reader would pass must not bring the arithmetic down.
func TestDegenerateScenarios(t *testing.T) {
	lonely := chain(sim.Station{Name: "a"}, sim.Station{Name: "b", From: "nowhere"})
	scrap := chain(sim.Station{Name: "a", RejectShare: 1}, sim.Station{Name: "b", RejectShare: 1})
	ring := chain(sim.Station{Name: "a", From: "b"}, sim.Station{Name: "b"})
	bare := &scenario.Scenario{Line: sim.Line{Stations: []sim.Station{{Name: "a", Stops: []sim.Stop{{Name: "s"}}}}, Buffers: []sim.Buffer{{Name: "b"}}}}
	for name, s := range map[string]*scenario.Scenario{"empty": {}, "lonely": lonely, "scrap": scrap, "ring": ring, "bare": bare} {
		f := Derive(s)
		if err := f.Text(io.Discard); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := json.Marshal(f.List()); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if f := Derive(lonely); !strings.Contains(strings.Join(f.Warnings, " "), "No way leads from a to b") {
		t.Errorf("a station without a way to the count is warned of, got %q", f.Warnings)
	}
}

// A name is text, whatever is in it, and a table stays in its columns.
func TestHostileNames(t *testing.T) {
	s := lowmere()
	s.Line.Stations[0].Name = "\x1b[31m</script>\tblister\nmachine with a name that goes on and on and on and on"
	s.Line.Buffers[0].From = []string{s.Line.Stations[0].Name}
	var b strings.Builder
	if err := Derive(s).Text(&b); err != nil {
		t.Fatal(err)
	}
	for line := range strings.SplitSeq(b.String(), "\n") {
		if utf8.RuneCountInString(line) > width {
			t.Errorf("wider than %d: %s", width, line)
		}
	}
	if strings.ContainsAny(b.String(), "\x1b\t") {
		t.Error("a control character of a name reached the terminal")
	}
}

func TestNumbers(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 0.6428571: "0.643", 7.92: "7.92", 20: "20", 138.99: "139", 9.999: "10", 67.5: "67.5",
		1113.2: "1 113", 183333: "183 333", -1234567: "−1 234 567", 99.97: "100",
	} {
		if got := strings.ReplaceAll(number(v), quantity.Thin, " "); got != want {
			t.Errorf("%v: got %s, want %s", v, got, want)
		}
	}
}

// Warnings of a belt that is too short for its flow: 129 places, 8 m at
// 4.8 m/min take 100 s, in which 400 blisters come. Hand computation.
func TestBeltThatIsTooShort(t *testing.T) {
	s := lowmere()
	s.Line.Buffers[0].Transit = 100 * sim.Second
	f := Derive(s)
	if !f.Places[0].Overfull || f.Places[0].Spare != 0 || f.Places[0].InTransit != 129 {
		t.Errorf("%+v", f.Places[0])
	}
	if !strings.Contains(strings.Join(f.Warnings, " "), "more blisters would be on the way in transfer belt (400) than it has places (129)") {
		t.Errorf("warnings: %q", f.Warnings)
	}
}

// A fast step that leaves the qualified dwell is said with the speed. Hand
// computation: 0.45 of a cycle of 0.6 s.
func TestFastStepOutsideDwell(t *testing.T) {
	s := lowmere()
	s.Stations[1].Sealing = scenario.Sealing{DwellShare: 0.45, DwellMin: 300_000, DwellMax: 400_000}
	f := Derive(s)
	if d := f.Stations[1].Dwell; !d.SetInside || d.FastestInside {
		t.Errorf("%+v", d)
	}
	want := "At 100 cycles/min cartoner is outside its qualified dwell: 0.27 s, but 0.3 to 0.4 s is qualified, which allows 67.5 to 90 cycles/min."
	if f.Warnings[0] != want {
		t.Errorf("got %q, want %q", f.Warnings[0], want)
	}
}
