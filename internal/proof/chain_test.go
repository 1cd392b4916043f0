package proof

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"tuckline/sim"
)

// chainLine is a serial line with exponential cycles, stops and repairs, blocking after the cycle.
type chainLine struct {
	rate, fail, repair []float64
	slots              []int64
	// calendar: stops come at any time, and a stopped empty machine takes its input.
	calendar bool
}

// phase is what a machine has: nothing, a piece in work, a finished piece.
type phase uint8

const (
	empty phase = iota
	work
	finished
)

// chainState is one state of the line; up to four machines.
type chainState struct {
	machine [4]phase
	down    [4]bool
	buffer  [3]int64
}

// settle moves pieces until nothing moves any more, from the last machine back to the first.
func (l *chainLine) settle(s chainState) chainState {
	n := len(l.rate)
	for moved := true; moved; {
		moved = false
		for i := n - 1; i >= 0; i-- {
			if s.machine[i] == finished {
				switch {
				case i == n-1:
					s.machine[i], moved = empty, true
				case s.buffer[i] == 0 && s.machine[i+1] == empty:
					s.machine[i], s.machine[i+1], moved = empty, work, true
				case s.buffer[i] < l.slots[i]:
					s.machine[i], moved = empty, true
					s.buffer[i]++
				}
			}
			if s.machine[i] == empty && i == 0 {
				s.machine[i], moved = work, true
			} else if s.machine[i] == empty && s.buffer[i-1] > 0 {
				s.machine[i], moved = work, true
				s.buffer[i-1]--
			}
		}
	}
	return s
}

// step is a way from one state to another, with its rate.
type step struct {
	to   int
	rate float64
	out  bool
}

// chain are the states that the line can reach, and the steps from each.
func (l *chainLine) chain() (states []chainState, steps [][]step) {
	index := map[chainState]int{}
	at := func(s chainState) int {
		if _, known := index[s]; !known {
			index[s] = len(states)
			states = append(states, s)
		}
		return index[s]
	}
	at(l.settle(chainState{}))
	for k := 0; k < len(states); k++ {
		var out []step
		for i := range l.rate {
			s := states[k]
			if s.down[i] {
				s.down[i] = false
				out = append(out, step{at(s), l.repair[i], false})
				continue
			}
			if s.machine[i] == work {
				s.machine[i] = finished
				out = append(out, step{at(l.settle(s)), l.rate[i], i == len(l.rate)-1})
				s = states[k]
			}
			if s.machine[i] == work || l.calendar {
				s.down[i] = true
				out = append(out, step{at(s), l.fail[i], false})
			}
		}
		steps = append(steps, out)
	}
	return states, steps
}

// throughput solves the balance of the chain by Gauss and Seidel.
func (l *chainLine) throughput() float64 {
	states, steps := l.chain()
	into, leave := make([][]step, len(states)), make([]float64, len(states))
	for from, all := range steps {
		for _, s := range all {
			into[s.to] = append(into[s.to], step{to: from, rate: s.rate})
			leave[from] += s.rate
		}
	}
	p := make([]float64, len(states))
	for i := range p {
		p[i] = 1 / float64(len(p))
	}
	for change := 1.0; change > 1e-13; {
		change = 0
		for i := range p {
			sum := 0.0
			for _, s := range into[i] {
				sum += p[s.to] * s.rate
			}
			change = max(change, math.Abs(sum/leave[i]-p[i]))
			p[i] = sum / leave[i]
		}
	}
	out, all := 0.0, 0.0
	for i, ways := range steps {
		all += p[i]
		for _, s := range ways {
			if s.out {
				out += p[i] * s.rate
			}
		}
	}
	return out / all
}

func (l *chainLine) String() string {
	return fmt.Sprintf("rates %.3g, failures %.3g, repairs %.3g, places %d, calendar %v", l.rate, l.fail, l.repair, l.slots, l.calendar)
}

// The solver gives the exact values of the sources.
func TestChainGivesTheExactValues(t *testing.T) {
	compared := 0
	for _, c := range allCases(t) {
		if (c.Family != "unreliable" && c.Family != "exponential") || len(c.line.Crews) > 0 || c.line.Stations[0].RejectShare > 0 {
			continue
		}
		l, ok := chainOf(c)
		if !ok {
			continue
		}
		compared++
		if got, want := l.throughput(), c.figures[0].exact; math.Abs(got-want) > 1e-8 {
			t.Errorf("%s: %.10g, exact %.10g", c.Name, got, want)
		}
	}
	if compared < 20 {
		t.Errorf("only %d values were compared", compared)
	}
	t.Logf("%d values", compared)
}

// chainOf reads a line of exponential laws with two to four machines back.
func chainOf(c *Case) (*chainLine, bool) {
	l := &chainLine{calendar: c.line.Stations[0].LoadsWhileStopped}
	if len(c.line.Stations) > 4 || len(c.line.Buffers) < len(c.line.Stations)-1 {
		return nil, false
	}
	for i := range c.line.Stations {
		s := &c.line.Stations[i]
		if s.Cycle.CV() != 1 {
			return nil, false
		}
		l.rate = append(l.rate, c.unit/s.Cycle.Mean())
		fail, repair := 0.0, 1.0
		if len(s.Stops) > 0 {
			fail, repair = c.unit/s.Stops[0].Every.Mean(), c.unit/s.Stops[0].Lasts.Mean()
		}
		l.fail, l.repair = append(l.fail, fail), append(l.repair, repair)
	}
	for i := range c.line.Buffers {
		l.slots = append(l.slots, c.line.Buffers[i].Holds)
	}
	return l, true
}

// Lines that nobody has seen before: rates, repairs and places drawn once, the exact value from the
// chain, ours from the simulation, by the rules of the proof.
func TestLinesNobodyTuned(t *testing.T) {
	source := rand.New(rand.NewPCG(2026, 11))
	var cases []*Case
	for k := range 16 {
		l := &chainLine{calendar: k%2 == 0}
		n := 2 + source.IntN(3)
		for i := range n {
			l.rate = append(l.rate, 0.7+0.8*source.Float64())
			l.fail = append(l.fail, 0.01+0.1*source.Float64())
			l.repair = append(l.repair, 0.1+0.5*source.Float64())
			if i > 0 {
				l.slots = append(l.slots, int64(source.IntN(4)))
			}
		}
		cases = append(cases, l.asCase(fmt.Sprintf("drawn line %d", k+1)))
	}
	rows, err := compareAll(context.Background(), cases, Quick, nil)
	if err != nil {
		t.Fatal(err)
	}
	o := &Outcome{Rows: rows}
	o.judge()
	for _, r := range o.Faults() {
		t.Errorf("%s, %s: exact %v, ours %v to %v, again %+v", r.Case.Name, r.Case.Model, r.Exact, r.Low, r.High, r.Again)
	}
	t.Logf("%d of %d outside at first", o.Outside, o.Cases)
}

// asCase makes the line of sim with the exact value of the chain.
func (l *chainLine) asCase(name string) *Case {
	e := &entry{name: name, unit: 1e6}
	line := serial(each(inverse(l.rate), e.exp), l.slots...)
	clock := sim.RunningClock
	if l.calendar {
		clock = sim.CalendarClock
		for i := range line.Stations {
			line.Stations[i].LoadsWhileStopped = true
		}
	}
	e.fails(&line, clock, l.fail, l.repair)
	c := e.sim(l.String(), "", line, e.settled(line))
	c.figures = []*figure{{quantity: "throughput", exact: l.throughput(), of: e.rate(len(l.rate) - 1)}}
	return c
}
