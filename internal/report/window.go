package report

import (
	"fmt"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// window is what one replication measures, in the words of the answer.
type window struct {
	// One and Many are "shift" and "shifts", or "run of 70 h" and "runs of 70 h".
	One, Many string
	// Length is "8 h", or empty where One says it already.
	Length string
	// Hours are scheduled hours; Clock has those off shift too, of which the shares of states are.
	Hours, Clock float64
}

func windowOf(s *scenario.Scenario) window {
	w := window{
		Length: length(s.ScheduledMeasure()),
		Hours:  float64(s.ScheduledMeasure()) / float64(sim.Hour), Clock: float64(s.Run.Measure) / float64(sim.Hour),
	}
	switch s.Answer.Per {
	case "shift", "week":
		w.One, w.Many = say("window."+s.Answer.Per, nil), say("windows."+s.Answer.Per, nil)
	default:
		f := facts{"Length": w.Length}
		w.One, w.Many, w.Length = say("window.run", f), say("windows.run", f), ""
	}
	return w
}

// length writes a duration in the largest unit that keeps it short.
func length(d sim.Micros) string {
	at := func(unit sim.Micros) float64 { return float64(d) / float64(unit) }
	switch {
	case d >= sim.Hour:
		return short(at(sim.Hour)) + thin + "h"
	case d >= sim.Minute:
		return short(at(sim.Minute)) + thin + "min"
	case d >= sim.Second || d == 0:
		return short(at(sim.Second)) + thin + "s"
	default:
		return short(at(sim.Second/1000)) + thin + "ms"
	}
}

// clock writes seconds from the beginning of a window as 1:02:05.
func clock(seconds float64) string {
	s := int64(seconds + 0.5)
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}
