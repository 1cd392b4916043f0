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
	crew := helper{machine: &m}
	for c := range cycles {
		for cause := m.UsedUp(); cause >= 0; cause = m.UsedUp() {
			if i := cause - len(m.stops); i >= 0 && m.IsAsked(i) {
				crew.due[i] = 0
			}
			log = append(log, fmt.Sprintf("%d: change of %d lasts %d", done, cause, m.Lasts(cause)))
			if m.Opened(cause); cause >= len(pl.Stops) {
				m.Change(cause, false)
			}
		}
		if c%9 == 4 {
			m.LosePacks(false, 0)
		}
		if c%5 == 3 {
			work := m.Pocket(pause(c))
			if part, yes := split(work); yes {
				m.Interrupt(work - part)
				m.Resume(0)
			}
			done += work
			m.PocketOver()
		}
		work := m.Start(level(c), pause(c))
		if c%7 == 6 {
			m.LosePacks(true, 0)
		}
		crew.refill()
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
			if m.Quiet() {
				break
			}
			cause := m.Strike()
			if cause < 0 {
				break
			}
			log = append(log, fmt.Sprintf("%d: stop %d lasts %d", done, cause, m.Lasts(cause)))
			m.Stopped(second)
			work = m.Resume(0)
		}
		good, scrapped := pl.Gives, false
		if careful := !m.Quiet(); careful {
			if good, scrapped = m.End(); !scrapped {
				good = m.Sample(good)
				log = append(log, crew.tests(done)...)
				for i := range pl.Rejects {
					if r := m.Rejected(i); r.All > 0 {
						log = append(log, fmt.Sprintf("%+v", r))
					}
				}
			}
		}
		log = append(log, fmt.Sprintf("%d: %d good, scrapped %v", done, good, scrapped))
		log = append(log, crew.alarms(c)...)
	}
	return log
}

// helper refills stocks amid the third cycle after their alarm, and ends tests at once.
type helper struct {
	machine *Machine
	due     []int // by stock: cycles to go, 0 without alarm
}

// alarms asks for refills, and now and then notes the stocks.
func (h *helper) alarms(c int) (log []string) {
	m := h.machine
	if h.due == nil {
		h.due = make([]int, len(m.stocks))
	}
	for i := range m.stocks {
		if m.Alarms(i) {
			m.Asked(i)
			h.due[i] = 3
			log = append(log, fmt.Sprintf("alarm of %d after cycle %d", i, c))
		}
		if c%9 == 8 {
			left, used, wasted := m.Stock(i, false)
			log = append(log, fmt.Sprintf("stock %d: %d left, %d used, %d wasted, %d tries failed", i, left, used, wasted, m.FailedPicks(i)))
		}
	}
	return log
}

// tests notes what checks have taken of a cycle that was done step by step.
func (h *helper) tests(done plan.Micros) (log []string) {
	m := h.machine
	for i := range m.checks {
		pieces, complete := m.Sampled(i)
		if pieces > 0 {
			log = append(log, fmt.Sprintf("%d: test %d took %d", done, i, pieces))
		}
		if complete {
			m.Tested(i, false)
		}
	}
	return log
}

func (h *helper) refill() {
	for i := range h.due {
		if h.due[i]--; h.due[i] == 0 {
			h.machine.Change(len(h.machine.stops)+i, true)
		}
	}
}

// pause is that before a cycle: now and then long enough for a standstill.
func pause(c int) plan.Micros {
	if c%6 == 5 {
		return 10 * second
	}
	return 0
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
	pl.Pace.Ramp = rapid.SampledFrom([]plan.Micros{0, 3 * second}).Draw(t, "ramp")
	pl.Pace.Heat = rapid.SampledFrom([]plan.Micros{0, 2 * second}).Draw(t, "heat")
	if rapid.Bool().Draw(t, "rejects") {
		pl.Rejects = []plan.Reject{randomReject(t, pl.Gives)}
	}
	if rapid.Bool().Draw(t, "scrap") {
		pl.AfterStop = []plan.Scrap{{Cycles: 2}}
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "stops") {
		pl.Stops = append(pl.Stops, randomStop(t, fmt.Sprintf("stop %d", i)))
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "stocks") {
		full := rapid.Int64Range(3, 40).Draw(t, "full")
		stock := plan.Stock{
			Name: fmt.Sprintf("stock %d", i), Full: full, PerCycle: 3, Refill: full, PartUsed: i > 0,
			Work: plan.Work{Lasts: draw.Fixed(float64(second)), Crew: plan.None}, Alarm: 2,
			Scrap: rapid.Int64Range(0, 2).Draw(t, "splice scrap"), Fails: rapid.SampledFrom([]float64{0, 0.4}).Draw(t, "fails"),
		}
		switch rapid.IntRange(0, 2).Draw(t, "refilled") {
		case 0:
			stock.Tasked, stock.Alarm = true, rapid.Int64Range(2, full-1).Draw(t, "alarm")
		case 1:
			stock.Tasked, stock.Length = true, rapid.Int64Range(3, 30).Draw(t, "store")
			stock.Gains = rapid.Int64Range(1, 5).Draw(t, "gains")
		}
		pl.Stocks = append(pl.Stocks, stock)
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "checks") {
		s := randomStop(t, "")
		pl.Checks = append(pl.Checks, plan.Check{
			Name: fmt.Sprintf("check %d", i), Clock: s.Clock, Every: s.Every, Takes: rapid.Int64Range(1, 9).Draw(t, "sample"),
		})
	}
	if len(pl.Rejects) > 0 {
		randomSignals(t, pl)
	}
	return pl
}

func randomReject(t *rapid.T, gives int64) plan.Reject {
	share := func(name string) float64 { return rapid.SampledFrom([]float64{0, 0.02, 0.2, 1}).Draw(t, name) }
	return plan.Reject{
		Gives: gives, Share: share("share"), NoReads: share("no-reads"), Signal: plan.None,
		Runs:        plan.Runs{Enter: share("enter"), Share: share("share in a run"), Length: rapid.SampledFrom([]float64{1, 4}).Draw(t, "length")},
		After:       rapid.Int64Range(0, 3).Draw(t, "leaves after"),
		LostPerStop: rapid.Int64Range(0, 8).Draw(t, "lost"),
	}
}

// randomSignals lets rejects in a row and picks stop the station.
func randomSignals(t *rapid.T, pl *plan.Station) {
	raised := func(name string) int {
		pl.Stops = append(pl.Stops, plan.Stop{
			Name: name, Clock: plan.SignalClock, Work: plan.Work{Lasts: draw.Fixed(float64(second)), Crew: plan.None},
		})
		return len(pl.Stops) - 1
	}
	if n := rapid.Int64Range(0, 3).Draw(t, "in a row"); n > 0 {
		pl.Rejects[0].InARow, pl.Rejects[0].Signal = n, raised("in a row")
	}
	for i := range pl.Stocks {
		if share := rapid.SampledFrom([]float64{0, 0.3, 0.9}).Draw(t, "mis-picks"); share > 0 && pl.Stocks[i].Length == 0 {
			pl.Picks = append(pl.Picks, plan.Pick{
				Stock: i, Share: share, Retries: rapid.Int64Range(0, 2).Draw(t, "retries"), Signal: raised(fmt.Sprintf("mis-picked %d", i)),
			})
		}
	}
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
