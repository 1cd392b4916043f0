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
		return []string{say("answer.none", facts{"Unit": out.Unit, "N": whole(float64(o.Results.Replications)), "Windows": w.Runs})}
	}
	f := facts{
		"Total": numberOf(out.Total, 1), "PerHour": numberOf(out.PerHour, 1),
		"Unit": out.Unit, "Window": w.One, "Length": w.Length, "Outside": s.outside(),
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
	sentences := []string{say(sentence, f)}
	if tenths(o.Shifts) {
		sentences = append(sentences, s.spread())
	}
	return sentences
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
			"N": o.Results.Replications, "Asked": o.Scenario.Run.Replications, "Windows": w.Runs,
		}))
	}
	return append(all, o.Results.Warnings...)
}

// causes are the largest reasons why the constraint did not run.
type causes struct {
	Intro, Meaning string
	Rows           []causeRow
}

type causeRow struct {
	Key, Words, Cost, Minutes string
	// Width is the length of the bar, in percent of the largest.
	Width float64
}

const shownCauses = 3

func causesOf(s *subject) causes {
	o, w := s.Outcome, s.Window
	if len(s.constraints()) == 0 {
		all := s.Figures.RejectingAll()
		return causes{Intro: say("causes.unlimited", facts{"Unit": o.Results.Output.Unit, "Stations": listed(all), "N": len(all)})}
	}
	var names, shares []string
	for _, station := range s.constraints() {
		names = append(names, station.Name)
		shares = append(shares, numberOf(station.States.Running, 100).String()+thin+"%")
	}
	f := facts{"Constraint": listed(names), "Running": listed(shares), "One": len(names) == 1, "Three": len(o.Causes) >= shownCauses, "Outside": s.outside()}
	gates := s.Figures.Gates()
	if len(gates) < len(s.Figures.Bounds.Constraint) {
		gates = nil // stations are as narrow: they are named
	}
	f["Gates"], f["Several"] = listed(gates), len(gates) > 1
	f["Limits"] = say("limits", f)
	if len(o.Causes) == 0 {
		return causes{Intro: say("causes.none", f)}
	}
	c := causes{Intro: say("causes.of", f), Meaning: say("causes.meaning", f)}
	for _, one := range o.Causes[:min(shownCauses, len(o.Causes))] {
		c.Rows = append(c.Rows, causeRow{
			Key: lookOf(one.State).Key, Words: causeWords(one),
			Cost:    say("cause.cost", facts{"Pieces": numberOf(one.Pieces, 1), "Unit": o.Results.Output.Unit, "Window": w.One}),
			Minutes: say("cause.minutes", facts{"Minutes": numberOf(one.Minutes, 1)}),
			Width:   100 * one.Pieces.Mean / o.Causes[0].Pieces.Mean,
		})
	}
	return c
}

func causeWords(c study.Cause) string {
	switch {
	case c.State == sim.PlannedStop:
		return c.Stop
	case c.Stop != "":
		return say("stop.at", facts{"Stop": c.Stop, "Station": listed(c.Stations)})
	case c.State == sim.Starved:
		return say("cause.starved", nil)
	case c.State == sim.Blocked:
		return say("cause.blocked", nil)
	default:
		return lookOf(c.State).Word()
	}
}
