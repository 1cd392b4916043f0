package study

import (
	"reflect"
	"testing"

	"tuckline/sim"
)

// lastOf is the time of the last entry of a trace.
func lastOf(trace sim.Trace) sim.Micros {
	last := sim.Micros(0)
	for _, one := range trace.States {
		last = max(last, one.At)
	}
	for _, one := range trace.Levels {
		last = max(last, one.At)
	}
	return last
}

// A trace ends with the window or after a day of it, so that long windows take
// no more memory; what it shows is the beginning of the first replication.
func TestTraceIsOfADayAtMost(t *testing.T) {
	const day = 24 * sim.Hour
	traced := func(warmUp, measure sim.Micros) *Outcome {
		s := stopping(t)
		s.Run.Replications, s.Run.WarmUp, s.Run.Measure = 2, warmUp, measure
		return mustRun(t, s, Options{Trace: true})
	}
	short, whole, long := traced(sim.Minute, sim.Hour), traced(sim.Minute, day), traced(sim.Minute, 4*day)
	for _, c := range []struct {
		name         string
		o            *Outcome
		from, length sim.Micros
	}{
		{"an hour", short, sim.Minute, sim.Hour},
		{"a day", whole, sim.Minute, day},
		{"four days", long, sim.Minute, day},
		{"a long warm-up", traced(3*day, sim.Hour), day, sim.Hour},
	} {
		end := c.from + c.length
		if c.o.TracedFrom != c.from || c.o.Traced != c.length {
			t.Errorf("%s: traced from %d for %d, want from %d for %d", c.name, c.o.TracedFrom, c.o.Traced, c.from, c.length)
		}
		if last := lastOf(c.o.Trace); last > end || last < end-sim.Hour/2 {
			t.Errorf("%s: the last entry is at %d, the window ends at %d", c.name, last, end)
		}
	}
	if !reflect.DeepEqual(long.Trace, whole.Trace) {
		t.Error("the first day of four days is another one than a day")
	}
	if none := mustRun(t, stopping(t), Options{}); none.Traced != 0 || none.Trace.States != nil {
		t.Errorf("traced for %d without being asked", none.Traced)
	}
}
