package keyfigure

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
)

// tightLine is a web of 4 blisters a second and a cartoner that takes 3 in
// 0.667 s; entry is what stands between.
func tightLine(t *testing.T, entry, blocks string) Figures {
	t.Helper()
	text := "tuckline: 1\nrun: {measure: 1 h, replications: 2}\nline:\n" +
		"  - {station: web, cycle: 60/min, gives: 4 blisters" + blocks + "}\n" + entry +
		"  - {station: cartoner, cycle: 90/min, takes: 3 blisters, gives: 1 carton}\n"
	s, err := scenario.Read("tight.yaml", []byte(text), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return Derive(s)
}

// The web is ready every second, the cartoner can take 4.5 blisters a second,
// and still they wait for each other where places are few.
//
// By hand, room for 4 before a cycle: with 8 places a rest of 2 and 4 that have
// just come are 3 after the take at once, and 4 more fit. With 6 places the web
// has to wait for a second take; a run of the whole line gives 3,927 cartons an
// hour, which are 196.4 blisters a minute.
func TestTightPlacesAreWarnedOf(t *testing.T) {
	const before = ", blocks: before cycle"
	for _, c := range []struct{ name, entry, blocks, want string }{
		{
			"hand-over", "", before,
			"Even without a stop web hands 196 blisters/min over to cartoner, not 240: all 4 of them have to find room before a cycle begins, and there are 6 places. With 8 places it would be 240.",
		},
		{
			"small store", "  - {buffer: store, holds: 6 blisters}\n", before,
			"Even without a stop web hands 196 blisters/min over to cartoner, not 240: all 4 of them have to find room before a cycle begins, and there are 6 places. With 8 places it would be 240.",
		},
		{"store", "  - {buffer: store, holds: 8 blisters}\n", before, ""},
		{"unlimited", "  - {buffer: store, holds: unlimited}\n", before, ""},
		{"belt", "  - {conveyor: belt, length: 4 m, speed: 24 m/min, pitch: 62 mm, accumulating: yes}\n", before, ""},
		{
			"after service", "", "",
			"Even without a stop web hands 216 blisters/min over to cartoner, not 240: they leave together and have to find room, and there are 3 places. With 4 places it would be 240.",
		},
		{"after service with a store", "  - {buffer: store, holds: 4 blisters}\n", "", ""},
	} {
		got := ""
		for _, warning := range tightLine(t, c.entry, c.blocks).Warnings {
			if strings.Contains(warning, "Even without a stop") {
				got += warning
			}
		}
		if got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

// A station that takes from two places waits for both, which a pair does not show.
func TestTightPlacesOfAnAssemblyAreNotJudged(t *testing.T) {
	text := `tuckline: 1
line:
  - {station: web, cycle: 60/min, gives: 4 blisters, blocks: before cycle}
  - {station: leaflet folder, from: supply, cycle: 100/min, gives: 1 leaflet}
  - {station: cartoner, cycle: 90/min, takes: {web: 3 blisters, leaflet folder: 1 leaflet}, gives: 1 carton}
`
	s, err := scenario.Read("assembly.yaml", []byte(text), scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(Derive(s).Warnings, "\n"); strings.Contains(got, "Even without a stop") {
		t.Error(got)
	}
}
