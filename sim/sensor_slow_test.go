package sim_test

import (
	"testing"

	"pgregory.net/rapid"
	"tuckline/sim"
)

// slowBelt is a belt between two machines, A and B, in steps of a millisecond: at each it looks where every piece is.
type slowBelt struct {
	cycle, gives, takes, work    int64 // of A and of B
	stopAt, stopFor              int64 // of B
	holds, transit, spacing, end int64
	full, clear, fullDelay       int64
	clearDelay                   int64
	now, reports, blocked, taken int64
	stopped                      bool
	since                        int64 // of what the next report waits for, -1 if it does not hold
	pieces                       []int64
	aDue, bLeft                  int64 // when A is ready; what B has still to work
}

// reached says that all pieces up to the n-th are as near to the exit as if they stood: as many pieces before it as are in front
// of them.
func (b *slowBelt) reached(n int64) bool {
	for k := range n {
		if k >= int64(len(b.pieces)) || b.pieces[k]-k*b.spacing > b.now && b.pieces[k] > b.now {
			return false
		}
	}
	return true
}

func (b *slowBelt) look() bool {
	holds, delay := b.reached(b.full), b.fullDelay
	if b.stopped {
		holds, delay = !b.reached(b.clear), b.clearDelay
	}
	switch {
	case !holds:
		b.since = -1
	case b.since < 0:
		b.since = b.now
	}
	if !holds || b.now-b.since < delay {
		return false
	}
	b.report()
	return true
}

func (b *slowBelt) report() {
	b.stopped, b.since = !b.stopped, -1
	if b.stopped {
		b.reports++
	}
}

// move does one move, B before A.
func (b *slowBelt) move() bool {
	up := b.now < b.stopAt || b.now >= b.stopAt+b.stopFor
	switch {
	case up && b.bLeft == 0 && int64(len(b.pieces)) >= b.takes && b.pieces[b.takes-1] <= b.now:
		b.pieces, b.bLeft, b.taken = b.pieces[b.takes:], b.work, b.taken+b.takes
	case b.now >= b.aDue && !b.stopped && int64(len(b.pieces))+b.gives <= b.holds:
		for range b.gives {
			b.pieces = append(b.pieces, b.now+b.transit)
		}
		b.aDue = b.now + b.cycle
	default:
		return false
	}
	return true
}

func (b *slowBelt) run() {
	b.aDue, b.since = b.cycle, -1
	for ; b.now < b.end; b.now++ {
		if b.since >= 0 { // what has lasted for its delay is reported before the moves
			if delay := map[bool]int64{false: b.fullDelay, true: b.clearDelay}[b.stopped]; b.now-b.since >= delay {
				b.report()
			}
		}
		for again := true; again; {
			for b.move() {
			}
			again = b.look()
		}
		if b.now >= b.aDue {
			b.blocked++
		}
		if b.bLeft > 0 && (b.now < b.stopAt || b.now >= b.stopAt+b.stopFor) {
			b.bLeft--
		}
	}
}

// The engine, which reckons when the queue reaches a sensor, against a belt that is looked at each millisecond.
func TestSensorsAgainstABeltInSmallSteps(t *testing.T) {
	reports := int64(0)
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string, low, high int64) int64 { return rapid.Int64Range(low, high).Draw(t, label) }
		b := slowBelt{
			cycle: 2 * draw("cycle", 5, 100), gives: draw("gives", 1, 4), takes: draw("takes", 1, 3), work: 2 * draw("work", 5, 100),
			stopAt: 2*draw("stop at", 200, 1000) + 1, stopFor: draw("stop for", 1, 1000), spacing: 2 * draw("spacing", 1, 20), end: 4000,
		}
		b.holds = b.gives + b.takes - 1 + draw("holds", 1, 25)
		b.transit = b.holds*b.spacing + 2*draw("rest", 0, 3)
		b.full, b.clear = draw("full", b.takes, b.holds), draw("clear", b.takes, b.holds)
		b.fullDelay, b.clearDelay = draw("full delay", 0, 150), draw("clear delay", 0, 150)
		if b.clear > b.full {
			b.clearDelay = max(1, b.clearDelay)
		}
		b.end = min(b.end, 2*b.stopAt+b.stopFor) // its second stop
		b.run()
		reports += b.reports
		sensor := func(at, delay int64) sim.Sensor {
			return sim.Sensor{On: true, At: at, Delay: sim.Micros(delay) * 1000, Travel: sim.Micros(at*b.spacing) * 1000}
		}
		web, cartoner := one("A", "", float64(b.cycle)/1000), one("B", "belt", float64(b.work)/1000)
		web.Gives, cartoner.Takes = b.gives, b.takes
		cartoner.Stops = []sim.Stop{{Name: "jam", Clock: sim.CalendarClock, Every: sim.Fixed(float64(b.stopAt) * 1000), Lasts: sim.Fixed(float64(b.stopFor) * 1000)}}
		m, err := sim.Compile(sim.Line{
			Stations: []sim.Station{web, cartoner},
			Buffers: []sim.Buffer{{
				Name: "belt", From: []string{"A"}, Holds: b.holds, Transit: sim.Micros(b.transit) * 1000, Conveyor: true,
				Full: sensor(b.full, b.fullDelay), Clear: sensor(b.clear, b.clearDelay),
			}},
		})
		if err != nil {
			t.Fatal(err)
		}
		rec := m.NewEngine().Run(sim.Options{Measure: sim.Micros(b.end) * 1000})
		got := [3]int64{rec.Buffers[0].SensorStops, int64(rec.Stations[0].States[sim.Blocked]) / 1000, rec.Buffers[0].Out}
		if want := [3]int64{b.reports, b.blocked, b.taken}; got != want {
			t.Fatalf("reports, time blocked, pieces taken: %v, in small steps %v", got, want)
		}
	})
	if reports < 100 {
		t.Errorf("only %d reports", reports)
	}
}
