package report

import (
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
)

func parse(t *rapid.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// changes draws a trace of one station, every state entered at a time of its own.
func changes(t *rapid.T, until sim.Micros) []sim.StateChange {
	var all []sim.StateChange
	for at := sim.Micros(0); at < until && len(all) < 400; {
		all = append(all, sim.StateChange{At: at, State: sim.State(rapid.IntRange(3, 7).Draw(t, "state")), By: -1, Stop: -1})
		at += sim.Micros(rapid.Int64Range(1, int64(sim.Minute)).Draw(t, "lasts"))
	}
	return all
}

// Joined or not, the stretches of a station fill the window without gap or
// overlap, and no stop is lost or shortened.
func TestStretchesFillTheWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := spell{sim.Hour / 4, sim.Hour}
		trace := changes(t, sim.Hour)
		all := stretches(trace, 0, w)
		at, stopped := w.From, sim.Micros(0)
		for _, one := range all {
			if one.From != at || one.To <= one.From {
				t.Fatalf("a stretch from %d to %d follows %d", one.From, one.To, at)
			}
			at = one.To
			if one.State == sim.Down {
				stopped += one.To - one.From
			}
		}
		if at != w.To {
			t.Fatalf("the last stretch ends at %d, the window at %d", at, w.To)
		}
		want := sim.Micros(0)
		for _, one := range exactStretches(trace, 0, w) {
			if one.State == sim.Down {
				want += one.To - one.From
			}
		}
		if stopped != want {
			t.Fatalf("down for %d, drawn for %d", want, stopped)
		}
	})
}

// What is left of a level has its lowest and highest value and goes forward in time.
func TestThinLevelsKeepTheExtremes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := spell{sim.Hour / 4, sim.Hour}
		var all []sim.LevelChange
		for at := sim.Micros(0); at < sim.Hour && len(all) < 2000; at += sim.Micros(rapid.Int64Range(1, int64(4*sim.Second)).Draw(t, "after")) {
			all = append(all, sim.LevelChange{At: at, Buffer: int(rapid.IntRange(0, 1).Draw(t, "buffer")), Level: rapid.Int64Range(0, 720).Draw(t, "level")})
		}
		points := thinLevels(all, 0, w)
		var inside []int64
		start := int64(0)
		for _, c := range all {
			switch {
			case c.Buffer != 0 || c.At >= w.To:
			case c.At <= w.From:
				start = c.Level
			default:
				inside = append(inside, c.Level)
			}
		}
		inside = append(inside, start)
		var drawn []int64
		for i, p := range points {
			drawn = append(drawn, p.level)
			if i > 0 && p.at < points[i-1].at {
				t.Fatalf("time goes back from %v to %v", points[i-1].at, p.at)
			}
		}
		if slices.Min(drawn) != slices.Min(inside) || slices.Max(drawn) != slices.Max(inside) {
			t.Fatalf("levels %d to %d are drawn as %d to %d", slices.Min(inside), slices.Max(inside), slices.Min(drawn), slices.Max(drawn))
		}
		if len(points) > 4*(drawnSlots+1)+2 {
			t.Fatalf("%d points", len(points))
		}
	})
}

func TestBinsHoldEveryValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(0, 1e6), 1, 300).Draw(t, "values")
		edges, counts := bins(values)
		total := 0
		for _, n := range counts {
			total += n
		}
		if total != len(values) || len(edges) != len(counts)+1 || len(counts) > 60 {
			t.Fatalf("%d values in %d bins with %d edges hold %d", len(values), len(counts), len(edges), total)
		}
		if edges[0] > slices.Min(values) || edges[len(edges)-1] < slices.Max(values) {
			t.Fatalf("bins from %v to %v for values from %v to %v", edges[0], edges[len(edges)-1], slices.Min(values), slices.Max(values))
		}
	})
}
