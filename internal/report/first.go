package report

import (
	"tuckline/internal/result"
	"tuckline/internal/study"
	"tuckline/sim"
)

// first is the first screen: who sees only it knows the answer, how sure it
// is, and what stands in its way.
type first struct {
	Title, Question string
	Answer          []string
	Interval        string
	Span            span
	Causes          causes
	Warnings        []string
}

func firstOf(in *subject) first {
	s, o, w := in.Scenario, in.Outcome, in.Window
	return first{
		Title: s.Title, Question: s.Question,
		Answer: in.answer(), Interval: intervalWords(o, w),
		Span: in.span(), Causes: causesOf(in), Warnings: warnings(o, w),
	}
}

func (s *subject) answer() []string {
	o, w, out := s.Outcome, s.Window, s.Results.Output
	if nothing(out) {
		return append(s.unfinished(), say("answer.none", facts{"Unit": out.Unit, "N": whole(float64(o.Results.Replications)), "Windows": w.Runs, "Lines": len(s.Scenario.Lines) > 1}))
	}
	f := facts{
		"Total": numberOf(out.Total, 1), "PerHour": numberOf(out.PerHour, 1),
		"Unit": out.Unit, "Window": w.One, "Length": w.Length, "Outside": s.outside(), "Aside": s.aside(), "Lines": len(s.Scenario.Lines) > 1,
	}
	sentence := "answer"
	switch {
	case o.UsedUp.N > 0 && o.UsedUp.N == out.Total.N:
		sentence = "answer.used.up"
		f["After"] = numberOf(o.UsedUp.AfterHours, 1)
		f["WarmUp"] = warmUpWords(o.Scenario.ScheduledWarmUp())
	case o.Scenario.Answer.Per == "hour":
		sentence = "answer.hour"
	}
	sentences := append(s.unfinished(), say(sentence, f))
	if tenths(o.Shifts) {
		sentences = append(sentences, s.spread())
	}
	if by := s.byShift(); by != "" {
		sentences = append(sentences, by)
	}
	return sentences
}

// byShift says what the shifts of each name make; nothing where there are no two to compare.
func (s *subject) byShift() string {
	shifts := s.Results.Output.ByShift
	if len(shifts) == 0 {
		return ""
	}
	place := placeIn(shifts, func(one result.ShiftMade) result.Estimate { return one.Good }, 1)
	var all []string
	for _, one := range shifts {
		all = append(all, say("answer.shift", facts{"Shift": one.Name, "Good": atPlace(one.Good, 1, place)}))
	}
	return say("answer.shifts", facts{"All": listed(all), "Unit": s.Results.Output.Unit, "Outside": s.outside()})
}

// aside is the scheduled time that is in no mean shift: "overtime and cleaning outside of shifts"; empty where the answer is none
// or the calendar has no such time.
func (s *subject) aside() string {
	c := s.Scenario.Calendar
	if !s.MeanShift {
		return ""
	}
	var regular, overtime sim.Micros
	for i := range c.Shifts {
		time := c.Shifts[i].Scheduled * sim.Micros(c.Shifts[i].AWeek)
		if c.Shifts[i].Overtime {
			overtime += time
		} else {
			regular += time
		}
	}
	var all []string
	if overtime > 0 {
		all = append(all, say("answer.overtime", nil))
	}
	if c.Week > regular+overtime {
		all = append(all, say("answer.cleaning", nil))
	}
	return listed(all)
}

// unfinished says how many runs were to end with their orders and did not; nothing where all did.
func (s *subject) unfinished() []string {
	n := s.Results.Unfinished
	if n == 0 {
		return nil
	}
	return []string{say("answer.unfinished", facts{"N": n, "Runs": s.Results.Replications + n, "Horizon": study.Horizon(s.Scenario)})}
}

// warmUpWords is a warm-up, or empty without one.
func warmUpWords(warmUp sim.Micros) string {
	if warmUp == 0 {
		return ""
	}
	return length(warmUp)
}

// tenths says whether there are enough windows to speak of one in ten.
func tenths(windows []float64) bool { return len(windows) >= 10 }

// nothing says that no good piece came out in any window.
func nothing(out result.Output) bool { return out.Total.N > 0 && out.Total.Mean == 0 }

// spread says in words how single windows differ.
func (s *subject) spread() string {
	out := s.Results.Output
	place := placeOf(halfWidth(out.Total), out.Total.Mean)
	return say("spread", facts{
		"Window": s.Window.One, "Unit": out.Unit, "Outside": s.outside(),
		"P10": rounded(out.ShiftP10, place), "P90": rounded(out.ShiftP90, place),
	})
}

func intervalWords(o *study.Outcome, w window) string {
	return say("interval", facts{
		"Confidence": short(o.Results.Confidence * 100),
		"N":          whole(float64(o.Results.Replications)), "Windows": w.Runs, "Window": w.One,
	})
}

// warnings change how the answer may be used.
func warnings(o *study.Outcome, w window) []string {
	var all []string
	if o.Interrupted {
		all = append(all, say("warning.interrupted", facts{
			"N": o.Results.Replications + o.Results.Unfinished, "Asked": o.Scenario.Run.Replications, "Windows": w.Runs,
		}))
	}
	for _, warning := range o.Results.Warnings {
		all = append(all, together(warning))
	}
	return all
}
