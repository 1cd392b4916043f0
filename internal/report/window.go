package report

import (
	"fmt"

	"tuckline/internal/study"
	"tuckline/sim"
)

// window is the time that figures are per, in the words of the answer: a shift or a week of the calendar, or what one
// replication measures.
type window struct {
	// One and Many are "shift" and "shifts", or "run of 70 h" and "runs of 70 h".
	One, Many string
	// Runs are what replications are called: Many, unless they measure something else than one shift or week.
	Runs string
	// Length is "8 h", or empty where One says it already.
	Length string
	// Hours are scheduled hours; of runs that end with their orders they are the average.
	Hours float64
}

func windowOf(o *study.Outcome) window {
	s := o.Scenario
	span := s.ScheduledMeasure()
	run := facts{"Length": roundLength(span)}
	w := window{Runs: say("windows.run", run)}
	if s.Run.UntilOrders {
		span, w.Runs = meanScheduled(o), say("windows.until", nil)
	}
	switch {
	case s.Answer.Per != "hour" && s.Calendar != nil:
		if span != s.AnswerSpan() || s.Run.UntilOrders {
			span = s.AnswerSpan()
		} else {
			w.Runs = say("windows."+s.Answer.Per, nil)
		}
		w.One, w.Many, w.Length = say("window."+s.Answer.Per, nil), say("windows."+s.Answer.Per, nil), roundLength(span)
	case s.Run.UntilOrders:
		w.One, w.Many = say("window.until", nil), w.Runs
	case s.Answer.Per != "hour":
		w.One, w.Many, w.Length = say("window."+s.Answer.Per, nil), say("windows."+s.Answer.Per, nil), roundLength(span)
		w.Runs = w.Many
	default:
		w.One, w.Many = say("window.run", run), w.Runs
	}
	w.Hours = float64(span) / float64(sim.Hour)
	return w
}

// meanScheduled is the mean scheduled time of the runs that estimates are from.
func meanScheduled(o *study.Outcome) sim.Micros {
	records := study.Counted(o.Scenario, o.Records)
	if len(records) == 0 {
		return o.Scenario.ScheduledMeasure()
	}
	var sum sim.Micros
	for i := range records {
		sum += records[i].Scheduled
	}
	return sum / sim.Micros(len(records))
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

// roundLength is length of a duration that was computed: what has more than three decimals in its unit is rounded to two.
func roundLength(d sim.Micros) string {
	unit := sim.Hour
	for _, smaller := range []sim.Micros{sim.Minute, sim.Second, sim.Second / 1000} {
		if d < unit {
			unit = smaller
		}
	}
	if d*1000%unit == 0 {
		return length(d)
	}
	step := max(1, unit/100)
	return length((d + step/2) / step * step)
}

// clock writes seconds from the beginning of a window as 1:02:05.
func clock(seconds float64) string {
	s := int64(seconds + 0.5)
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}
