package report

import (
	"tuckline/internal/result"
	"tuckline/internal/study"
)

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
		return causes{Intro: say("causes.unlimited", facts{"Unit": o.Results.Output.Unit, "Stations": s.stationList(all), "N": len(all)})}
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
			Key: branchLooks[one.Kind].key(), Words: s.causeWords(one, f["One"] == false),
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
	f := facts{"Constraint": s.stationList(names), "Good": listed(shares), "One": len(names) == 1, "Each": s.oneEach(names), "Three": len(s.Causes) >= shownCauses, "Only": len(s.Causes) == 1, "Outside": s.outside()}
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
func (s *subject) causeWords(c study.Cause, several bool) string {
	words := kindWords(c.Kind)
	switch {
	case c.Stop != "" && len(c.Stations) == 0: // a span of the calendar
		words = c.Stop
	case c.Stop != "":
		return say("stop.at", facts{"Stop": c.Stop, "Station": s.stationList(c.Stations)})
	case c.Kind == result.LossSlower && len(c.At) > 0:
		words = say("cause.slower", facts{"Slower": s.slowerBy(c.At[0])})
	case c.Kind == result.LossStarved:
		words = say("cause.starved", nil)
	case c.Kind == result.LossBlocked:
		words = say("cause.blocked", nil)
	}
	if several {
		return say("cause.at", facts{"Cause": words, "Stations": s.stationList(c.At)})
	}
	return words
}
