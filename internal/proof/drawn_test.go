package proof

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"tuckline/sim"
)

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
