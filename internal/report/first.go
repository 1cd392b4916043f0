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
		return []string{say("answer.none", facts{"Unit": out.Unit, "N": whole(float64(o.Results.Replications)), "Windows": w.Many})}
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
		f["WarmUp"] = warmUpWords(o.Scenario.Run.WarmUp)
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
		"N":          whole(float64(o.Results.Replications)), "Windows": w.Many, "Window": w.One,
	})
}

// warnings change how the answer may be used.
func warnings(o *study.Outcome, w window) []string {
	var all []string
	if o.Interrupted {
		all = append(all, say("warning.interrupted", facts{
			"N": o.Results.Replications, "Asked": o.Scenario.Run.Replications, "Windows": w.Many,
		}))
	}
	for _, warning := range o.Results.Warnings {
		all = append(all, together(warning))
	}
	return all
}

// causes are the largest parts of the constraint's time that were no good output.
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
	f := s.limitFacts()
	if len(o.Causes) == 0 {
		return causes{Intro: say("causes.none", f)}
	}
	c := causes{Intro: say("causes.of", f), Meaning: say("causes.meaning", f)}
	shown := o.Causes[:min(shownCauses, len(o.Causes))]
	pieces := placeIn(shown, func(c study.Cause) result.Estimate { return c.Pieces }, 1)
	minutes := placeIn(shown, func(c study.Cause) result.Estimate { return c.Minutes }, 1)
	for _, one := range shown {
		c.Rows = append(c.Rows, causeRow{
			Key: branchLooks[one.Kind].key(), Words: causeWords(one, f["One"] == false),
			Cost:    say("cause.cost", facts{"Pieces": atPlace(one.Pieces, 1, pieces), "Unit": o.Results.Output.Unit, "Window": w.One}),
			Minutes: say("cause.minutes", facts{"Minutes": atPlace(one.Minutes, 1, minutes)}),
			Width:   100 * one.Pieces.Mean / shown[0].Pieces.Mean,
		})
	}
	return c
}

// limitFacts say what limits the line, and the share of its time that is good output.
func (s *subject) limitFacts() facts {
	var names, shares []string
	for _, station := range s.constraints() {
		names = append(names, station.Name)
		if good := s.goodShare(station.Name); good.N > 0 {
			shares = append(shares, numberOf(good, 100).String()+thin+"%")
		}
	}
	if len(shares) < len(names) {
		shares = nil
	}
	f := facts{"Constraint": listed(names), "Good": listed(shares), "One": len(names) == 1, "Three": len(s.Causes) >= shownCauses, "Only": len(s.Causes) == 1, "Outside": s.outside()}
	gates := s.Figures.Gates()
	if len(gates) < len(s.Figures.Bounds.Constraint) {
		gates = nil // stations are as narrow: they are named
	}
	f["Gates"], f["Several"] = listed(gates), len(gates) > 1
	f["Limits"] = say("limits", f)
	return f
}

// goodShare is the share of good output at set speed in the loss tree of a station; N is 0 without a tree.
func (s *subject) goodShare(station string) result.Estimate {
	for _, tree := range s.Results.LossTrees {
		for _, b := range tree.Branches {
			if tree.Station == station && b.Kind == result.LossGood {
				return b.Share
			}
		}
	}
	return result.Estimate{}
}

// causeWords say a cause as the loss tree does; of several limiting stations those are named whose time it is.
func causeWords(c study.Cause, several bool) string {
	words := kindWords(c.Kind)
	switch {
	case c.Stop != "":
		return say("stop.at", facts{"Stop": c.Stop, "Station": listed(c.Stations)})
	case c.Kind == result.LossStarved:
		words = say("cause.starved", nil)
	case c.Kind == result.LossBlocked:
		words = say("cause.blocked", nil)
	}
	if several {
		return say("cause.at", facts{"Cause": words, "Stations": listed(c.At)})
	}
	return words
}
