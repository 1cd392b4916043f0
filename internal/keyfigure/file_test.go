package keyfigure

import (
	"io/fs"
	"math"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
	"tuckline/sim"
)

// The demo lines as Go values, by the name of the file that has the same line.
func demoLines() map[string]*scenario.Scenario {
	return map[string]*scenario.Scenario{
		"lowmere.yaml": lowmere(), "tarn-hollow.yaml": tarnHollow(36, 72),
		"brackwater-merged.yaml": merged(), "brackwater-wide.yaml": wide(),
	}
}

// Every example file can be derived; those whose inputs the tests hold as Go
// values, compared with the demo inputs table, give the same figures.
func TestExampleFiles(t *testing.T) {
	names, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal("no examples", err)
	}
	demos := demoLines()
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			s := readExample(t, name)
			f := Derive(s)
			if f.Bounds.Unlimited <= 0 || f.Bounds.Rigid <= 0 || len(f.Bounds.Constraint) == 0 {
				t.Errorf("%+v", f.Bounds)
			}
			if demo, known := demos[name]; known {
				demo.Calendar, demo.Line.Calendar = s.Calendar, s.Line.Calendar
				demo.Orders, demo.Line.Orders, demo.Lines = s.Orders, s.Line.Orders, s.Lines
				for i := range demo.Line.Stations {
					demo.Line.Stations[i].BatchPerCycle = s.Line.Stations[i].BatchPerCycle
				}
				for i := range demo.Line.Crews {
					demo.Line.Crews[i].ByShift = s.Line.Crews[i].ByShift
				}
				compareRows(t, f.List(), Derive(demo).List())
			}
		})
	}
}

// No example makes more than its bound, in one window of the engine; what is in stores at its beginning is
// allowed for, and what stops that come by chance make of it.
func TestExamplesMakeNoMoreThanTheBound(t *testing.T) {
	names, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		s := readExample(t, name)
		model, err := sim.Compile(s.Line)
		if err != nil {
			t.Fatal(name, err)
		}
		const hours = 50
		record, passed := model.NewEngine().Run(sim.Options{Seed: 1, WarmUp: 2 * sim.Hour, Measure: hours * sim.Hour}), 0.0
		for _, i := range s.Answer.CountedAfter {
			passed += float64(record.Stations[i].Passed)
		}
		if bound := Derive(s).Bounds.Unlimited * 60 * hours; passed > bound*(1+luck(s, model, &record))+1000 {
			t.Errorf("%s: %v passed, the bound is %v", name, passed, bound)
		}
	}
}

func readExample(t *testing.T, name string) *scenario.Scenario {
	t.Helper()
	text, err := fs.ReadFile(scenarios.FS, name)
	if err != nil {
		t.Fatal(err)
	}
	s, err := scenario.Read(name, text, scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func compareRows(t *testing.T, got, want []Row) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d figures, want %d", len(got), len(want))
	}
	for i, w := range want {
		g := got[i]
		if g.Group != w.Group || g.Name != w.Name || g.Unit != w.Unit || math.Abs(g.Value-w.Value) > 1e-6*math.Abs(w.Value) {
			t.Errorf("got %+v, want %+v", g, w)
		}
	}
}

// The smallest line by hand: 45 cycles of 4 blisters are 90 cartons of 2, less
// 1 % rejects. The blister machine stands 1.5 min in 900/45 = 20 min of
// running; the cartoner at 100 cartons/min 1 min in 6, which is one in
// 600 cartons. Hand computation.
func TestFirstLineByHand(t *testing.T) {
	f := Derive(readExample(t, "first-line.yaml"))
	near(t, "blister machine", f.Stations[0].AtMost.Answer, 90*0.99/1.075)
	near(t, "cartoner", f.Stations[1].AtMost.Answer, 100/(1+1.0/6))
	near(t, "bound", f.Bounds.Unlimited, 90*0.99/1.075)
	near(t, "tied", f.Bounds.Tied, 90*0.99)
	near(t, "rigid", f.Bounds.Rigid, 90*0.99/(1+0.075+90*0.99/600))
	near(t, "minutes of flow", f.Places[0].Minutes, 240.0/180)
	near(t, "empty after", f.Places[0].DrainMinutes, 240.0/(200-180))
}

// Warnings of the reader come first and stay what they are.
func TestWarningsOfTheReaderAreKept(t *testing.T) {
	s := tarnHollow(42, 84)
	s.Warnings = []string{"Read as it stands."}
	f := Derive(s)
	if len(f.Warnings) != 2 || f.Warnings[0] != "Read as it stands." || !strings.Contains(f.Warnings[1], "outside its qualified dwell") {
		t.Errorf("%q", f.Warnings)
	}
	if len(s.Warnings) != 1 {
		t.Error("the scenario itself has been changed")
	}
}
