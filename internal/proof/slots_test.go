package proof

import (
	"math"
	"testing"
)

// slotWay is a way to another state in one cycle, with its probability.
type slotWay struct {
	state chainState
	p     float64
}

// slotWays are all ways of one cycle: a machine that works fails with probability fail and loses the
// cycle, one that is down is repaired with probability repair and works in that cycle. A machine that
// blocks before its cycle does neither while there is no room.
func (l *chainLine) slotWays(s chainState) []slotWay {
	ways := []slotWay{{s, 1}}
	for i := range l.fail {
		full := l.before && i < len(l.slots) && s.buffer[i] >= l.slots[i]
		if s.machine[i] != work || full {
			continue
		}
		good, bad := 1-l.fail[i], l.fail[i]
		if s.down[i] {
			good, bad = l.repair[i], 1-l.repair[i]
		}
		var next []slotWay
		for _, w := range ways {
			stopped := w
			stopped.state.down[i] = true
			w.state.down[i], w.state.machine[i] = false, finished
			next = append(next, slotWay{w.state, w.p * good}, slotWay{stopped.state, stopped.p * bad})
		}
		ways = next
	}
	return ways
}

// perCycle is the output per cycle, by going on from the beginning until nothing changes.
func (l *chainLine) perCycle() float64 {
	last := len(l.fail) - 1
	now := map[chainState]float64{l.settle(chainState{}): 1}
	ways := map[chainState][]slotWay{}
	before, out := -1.0, 0.0
	for quiet := 0; quiet < 100; {
		next := map[chainState]float64{}
		out = 0
		for s, p := range now {
			if ways[s] == nil {
				ways[s] = l.slotWays(s)
			}
			for _, w := range ways[s] {
				if w.state.machine[last] == finished {
					out += p * w.p
				}
				next[l.settle(w.state)] += p * w.p
			}
		}
		if quiet++; math.Abs(out-before) > 1e-12 {
			quiet = 0
		}
		now, before = next, out
	}
	return out
}

// The chain of a line in cycles gives the published rates of two machines; those of the source for more
// machines, which take their input while they wait for room; and those that stand in the cases as our own.
func TestChainInCycles(t *testing.T) {
	for _, name := range []string{
		"GER2-1", "GER2-10", "GER2-N2-1", "LONG-3", "LONG-5", "LONG-6", "LONG-7", "LONG-8", "LONG-3, blocking after", "LONG-8, blocking after",
	} {
		c := caseOf(t, name)
		l := &chainLine{slots: make([]int64, len(c.line.Stations)-1), before: c.line.Stations[0].BlocksBefore}
		for i := range c.line.Buffers {
			l.slots[i] = c.line.Buffers[i].Holds
		}
		for i := range c.line.Stations {
			stop := &c.line.Stations[i].Stops[0]
			l.rate = append(l.rate, 1)
			l.fail = append(l.fail, 1/stop.Every.Mean())
			l.repair = append(l.repair, c.unit/stop.Lasts.Mean())
		}
		if got, want := l.perCycle(), c.figures[0].exact; math.Abs(got-want) > 1e-8 {
			t.Errorf("%s: %.10f, exact %.10f", name, got, want)
		}
	}
}
