package sim_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim"
	"tuckline/sim/internal/draw"
)

// A row of stations of one piece each, with places or belts between them, needs no calendar: with
// S the start of cycle n of station i, F its end and L the time at which its piece leaves,
//
//	S(i, n) = max(L(i, n−1), L(i−1, n) + transit)
//	F(i, n) = S(i, n) + cycle + the stops in it
//	L(i, n) = max(F(i, n), S(i+1, n−b)) with b places, max(F(i, n), L(i+1, n−1)) without
//
// (blocking after service; Buzacott & Shanthikumar 1993, chapter 5, and by hand). The cycles and
// stops are drawn from the streams of the engine; everything else is computed here.
type row struct {
	line    sim.Line
	places  []int64
	transit []sim.Micros
	from    sim.Micros
	to      sim.Micros
	want    map[string]int64
}

// source draws what happens in the cycles of one station.
type source struct {
	st                  *sim.Station
	cycle, every, lasts draw.Stream
	due                 int64 // millionths of a cycle
}

func newSource(st *sim.Station, seed uint64) *source {
	x := &source{
		st: st, cycle: draw.NewStream(seed, 0, st.Name, "cycle"),
		every: draw.NewStream(seed, 0, st.Name, "every", "jam"), lasts: draw.NewStream(seed, 0, st.Name, "lasts", "jam"),
	}
	x.due = x.age()
	return x
}

func (x *source) age() int64 {
	every := x.st.Stops[0].Every.Scale(1e6)
	return draw.Micros(&every, &x.every)
}

// next is a cycle and its stops, each after how much work and for how long.
func (x *source) next() (cycle sim.Micros, at, down []sim.Micros) {
	cycle = sim.Micros(draw.Micros(&x.st.Cycle, &x.cycle))
	for x.due < 1e6 && int64(cycle)*x.due/1e6 < int64(cycle) {
		at = append(at, sim.Micros(int64(cycle)*x.due/1e6))
		down = append(down, sim.Micros(draw.Micros(&x.st.Stops[0].Lasts, &x.lasts)))
		x.due += x.age()
	}
	x.due -= 1e6
	return cycle, at, down
}

func (r *row) add(figure string, from, to sim.Micros) {
	r.want[figure] += int64(max(0, min(to, r.to)-max(from, r.from)))
}

func (r *row) count(figure string, at sim.Micros) {
	if at >= r.from && at < r.to {
		r.want[figure]++
	}
}

// follow computes all cycles that start before the end of the window.
func (r *row) follow(seed uint64) {
	k := len(r.line.Stations)
	var sources []*source
	starts, leaves := make([][]sim.Micros, k), make([][]sim.Micros, k)
	for i := range r.line.Stations {
		sources = append(sources, newSource(&r.line.Stations[i], seed))
	}
	for n := 0; n == 0 || starts[0][n-1] < r.to; n++ {
		for i := range k {
			free := sim.Micros(0)
			if n > 0 {
				free = leaves[i][n-1]
			}
			start := free
			if i > 0 {
				start = max(start, leaves[i-1][n]+r.transit[i-1])
			}
			end := r.cycle(i, start, sources[i])
			leave := end
			if i < k-1 {
				switch b := r.places[i]; {
				case b == 0 && n > 0:
					leave = max(leave, leaves[i+1][n-1])
				case b > 0 && int64(n)-b >= 0:
					leave = max(leave, starts[i+1][int64(n)-b])
				}
			}
			starts[i], leaves[i] = append(starts[i], start), append(leaves[i], leave)
			name := r.line.Stations[i].Name
			r.add(name+" starved", free, start)
			r.add(name+" blocked", end, leave)
			r.count(name+" taken", start)
			r.count(name+" passed", leave)
			if i > 0 {
				r.add(fmt.Sprintf("level %d", i-1), leaves[i-1][n], start)
			}
		}
	}
}

// cycle notes what one cycle does and returns its end.
func (r *row) cycle(i int, start sim.Micros, x *source) sim.Micros {
	name := r.line.Stations[i].Name
	cycle, at, down := x.next()
	now, done := start, sim.Micros(0)
	for j := range at {
		r.add(name+" running", now, now+at[j]-done)
		now, done = now+at[j]-done, at[j]
		r.add(name+" down", now, now+down[j])
		r.count(name+" jam count", now)
		now += down[j]
	}
	r.add(name+" running", now, now+cycle-done)
	now += cycle - done
	r.count(name+" cycles", now)
	return now
}

func randomRow(t *rapid.T, unit sim.Micros) *row {
	l := &liner{t: t, unit: unit}
	r := &row{want: map[string]int64{}}
	r.from = l.time("warm-up", 0, 20*s)
	r.to = r.from + l.time("measure", 1*s, 60*s)
	for i := range l.count("stations", 1, 6) {
		st := sim.Station{Name: fmt.Sprintf("%c", "FBADCE"[i]), Takes: 1, Gives: 1, Cycle: l.law("cycle", 50_000, 2*s)}
		st.Stops = []sim.Stop{{Name: "jam", Every: l.cycles(), Lasts: l.law("lasts", 50_000, 5*s)}}
		if i > 0 {
			before := r.line.Stations[i-1].Name
			b := sim.Buffer{Name: fmt.Sprintf("buffer %d", i), From: []string{before}, Holds: l.pieces("places", 0, 5)}
			if b.Holds > 0 && l.chance("belt", 3) {
				b.Transit = l.time("transit", 50_000, 3*s)
			}
			st.From = b.Name
			r.line.Buffers = append(r.line.Buffers, b)
			r.places, r.transit = append(r.places, b.Holds), append(r.transit, b.Transit)
		}
		r.line.Stations = append(r.line.Stations, st)
	}
	return r
}

// The engine gives the integers of the recursion.
func TestRowsAgainstTheRecursion(t *testing.T) {
	for name, unit := range map[string]sim.Micros{"fine": fineGrid, "coarse": coarseGrid} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				r := randomRow(t, unit)
				m, err := sim.Compile(r.line)
				if err != nil {
					t.Fatal(err)
				}
				seed := rapid.Uint64().Draw(t, "seed")
				r.follow(seed)
				rec := m.NewEngine().Run(sim.Options{Seed: seed, WarmUp: r.from, Measure: r.to - r.from})
				got := figures(m, r.line, &rec)
				for i := range r.line.Buffers {
					got[fmt.Sprintf("level %d", i)] = rec.Buffers[i].LevelTime
				}
				for figure, want := range r.want {
					if got[figure] != want {
						t.Errorf("%s: by the recursion %d, by the engine %d", figure, want, got[figure])
					}
				}
			})
		})
	}
}
