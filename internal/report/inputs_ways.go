package report

import (
	"strings"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// run says what a run finds by itself; fixed times and numbers stand in the method.
func (l *inputList) run(run *scenario.Run, windows string) {
	l.of = say("input.run", nil)
	if run.AutoWarmUp {
		l.add("warm.up", nil)
	}
	if run.HalfWidth > 0 {
		l.named(say("input.half.width", facts{"Windows": windows}), "half.width", facts{"Share": short3(100 * run.HalfWidth), "AtMost": whole(float64(run.AtMost))})
	}
}

// flow says what a cycle takes and gives; a station that assembles takes from several places.
func (l *inputList) flow(line *sim.Station, people *scenario.Station) {
	takes := whole(float64(line.Takes)) + " " + people.TakesUnit
	if len(line.Also) > 0 {
		all := []string{inputWords(sim.Input{From: line.From, Takes: line.Takes})}
		for _, in := range line.Also {
			all = append(all, inputWords(in))
		}
		takes = listed(all)
	}
	l.add("flow", facts{
		"Takes": takes, "Gives": whole(float64(line.Gives)), "GivesUnit": people.GivesUnit, "First": line.From == "",
	})
	if line.Supply > 0 {
		l.add("supply", facts{"Pieces": whole(float64(line.Supply)), "Unit": people.TakesUnit})
	}
}

func inputWords(in sim.Input) string {
	return say("input.from", facts{"Takes": whole(float64(in.Takes)), "From": in.From})
}

// ways are how a station goes together with others, where that is not the usual way.
func (l *inputList) ways(line *sim.Station) {
	if len(line.Sends.To) > 0 {
		rule := [...]string{sim.InTurn: "in.turn", sim.FirstWithRoom: "first.with.room", sim.FewestPieces: "fewest.pieces"}[line.Sends.Rule]
		l.add("sends", facts{"To": strings.Join(line.Sends.To, ", "), "Rule": say("input.sends."+rule, nil)})
	}
	if line.Coupled != "" {
		l.add("coupled", facts{"Drive": line.Coupled})
	}
	if line.Priority != 0 {
		l.add("priority", facts{"Priority": line.Priority})
	}
	if line.LoadsWhileStopped {
		l.add("loads", nil)
	}
	if line.RandomAs != "" {
		l.add("random", facts{"Station": line.RandomAs})
	}
}

func (l *inputList) scrap(word string, rules []sim.ScrapRule) {
	for _, rule := range rules {
		f := facts{"Limit": length(rule.LongerThan), "Cycles": whole(float64(rule.Cycles)), "Lasts": ""}
		if rule.Lasts > 0 {
			f["Lasts"] = length(rule.Lasts)
		}
		l.add(word, f)
	}
}
