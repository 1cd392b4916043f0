package part

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

const second plan.Micros = 1_000_000

// worked runs cycles of a machine without neighbours and notes what happens, by the work done
// so far: strikes, ends with their fates, changes of stock. Split says whether to interrupt
// a stretch of work, and after how much of it.
func worked(pl *plan.Station, cycles int, level func(int) int64, split func(work plan.Micros) (plan.Micros, bool)) []string {
	var m Machine
	m.Reset(pl, 1, 2)
	var log []string
	done := plan.Micros(0)
	for c := range cycles {
		for cause := m.UsedUp(); cause >= 0; cause = m.UsedUp() {
			log = append(log, fmt.Sprintf("%d: change of %d lasts %d", done, cause, m.Lasts(cause)))
			m.Change(cause, false)
		}
		work := m.Start(level(c), 0)
		for {
			if part, yes := split(work); yes {
				m.Interrupt(work - part)
				done += part
				if left := m.Resume(0); left != work-part {
					log = append(log, fmt.Sprintf("%d: %d left of %d after %d", done, left, work, part))
				}
				work -= part
			}
			done += work
			cause := m.Strike()
			if cause < 0 {
				break
			}
			log = append(log, fmt.Sprintf("%d: stop %d lasts %d", done, cause, m.Lasts(cause)))
			m.Stopped(second)
			work = m.Resume(0)
		}
		good, scrapped := m.End()
		log = append(log, fmt.Sprintf("%d: %d good, scrapped %v", done, good, scrapped))
	}
	return log
}

// A cycle that is interrupted and goes on at once is as if nobody had interrupted it: a quiet
// cycle and one step by step are the same.
func TestInterruptedWithoutPauseIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pl := randomStation(t)
		levels := rapid.SliceOfN(rapid.Int64Range(0, 6), 1, 7).Draw(t, "levels")
		level := func(c int) int64 { return levels[c%len(levels)] }
		never := func(plan.Micros) (plan.Micros, bool) { return 0, false }
		n := 0
		often := rapid.SliceOfN(rapid.IntRange(-1, 4), 1, 9).Draw(t, "interrupted")
		some := func(work plan.Micros) (plan.Micros, bool) {
			n++
			quarter := often[n%len(often)]
			return work * plan.Micros(quarter) / 4, quarter >= 0 && work > 0
		}
		quiet, split := worked(pl, 60, level, never), worked(pl, 60, level, some)
		if !slices.Equal(quiet, split) {
			for i := range min(len(quiet), len(split)) {
				if quiet[i] != split[i] {
					t.Fatalf("entry %d: %q, interrupted %q", i, quiet[i], split[i])
				}
			}
			t.Fatalf("%d entries, interrupted %d", len(quiet), len(split))
		}
	})
}

func randomStation(t *rapid.T) *plan.Station {
	pl := &plan.Station{Name: "A", Takes: 1, Gives: rapid.Int64Range(1, 6).Draw(t, "gives")}
	cycle := plan.Micros(rapid.Int64Range(1, 3_000_000).Draw(t, "cycle"))
	pl.Pace = plan.Pace{Fixed: cycle, Law: draw.Fixed(float64(cycle)), RampAfter: cycle}
	if rapid.Bool().Draw(t, "random") {
		law, err := draw.Exponential(float64(cycle))
		if err != nil {
			t.Fatal(err)
		}
		pl.Pace.Fixed, pl.Pace.Law = 0, law
	}
	if rapid.Bool().Draw(t, "steps") {
		pl.Pace.Steps = []plan.Step{{From: 3, BackAt: 1, Cycle: cycle/2 + 1}}
	}
	pl.Pace.Every = rapid.Int64Range(0, 4).Draw(t, "every")
	pl.Pace.Adds = plan.Micros(rapid.Int64Range(1, 1_000_000).Draw(t, "adds"))
	if share := rapid.SampledFrom([]float64{0, 0.2, 1}).Draw(t, "rejects"); share > 0 {
		pl.Rejects = []plan.Reject{{Share: share, Gives: pl.Gives}}
	}
	if rapid.Bool().Draw(t, "scrap") {
		pl.AfterStop = []plan.Scrap{{Cycles: 2}}
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "stops") {
		pl.Stops = append(pl.Stops, randomStop(t, fmt.Sprintf("stop %d", i)))
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "stocks") {
		full := rapid.Int64Range(3, 40).Draw(t, "full")
		pl.Stocks = append(pl.Stocks, plan.Stock{
			Name: fmt.Sprintf("stock %d", i), Full: full, PerCycle: 3, Refill: full, PartUsed: i > 0,
			Work: plan.Work{Lasts: draw.Fixed(float64(second)), Crew: plan.None},
		})
	}
	return pl
}

func randomStop(t *rapid.T, name string) plan.Stop {
	s := plan.Stop{Name: name, Work: plan.Work{Lasts: draw.Fixed(float64(second)), Crew: plan.None}}
	s.Clock = rapid.SampledFrom([]plan.Clock{plan.CycleClock, plan.RunningClock}).Draw(t, "clock")
	mean := rapid.Float64Range(0.1, 20).Draw(t, "mean") * 1e6 // millionths of a cycle, or microseconds
	law, err := draw.Exponential(mean)
	if err != nil {
		t.Fatal(err)
	}
	s.Every = law
	if rapid.Bool().Draw(t, "fixed") {
		s.Every = draw.Fixed(float64(int64(mean)))
	}
	return s
}
