package report

import (
	"tuckline/internal/scenario"
)

// agreed says what an acceptance run has to show, where something is agreed.
func (l *inputList) agreed(a scenario.Agreement) {
	if a.Efficiency == 0 {
		return
	}
	l.of = say("input.agreement", nil)
	l.add("agreed", facts{"Efficiency": short(100 * a.Efficiency), "Of": speedWords(a.OfTopSpeed)})
	l.add("agreed.run", facts{"Run": length(a.Run), "From": length(a.From)})
}

// counted says how key figures are counted; a scenario that was read always does.
func (l *inputList) counted(k *scenario.KeyFigures) {
	if k.MinorIn == "" {
		return
	}
	l.of = say("input.key.figures", nil)
	l.counting(k.Counting)
	if r := k.Reported; r != nil {
		l.of = say("input.as.reported", nil)
		if r.OEE > 0 {
			l.add("reported.oee", facts{"OEE": short(100 * r.OEE)})
		}
		l.counting(r.Counting)
	}
}

func (l *inputList) counting(c scenario.Counting) {
	l.add("run.time", facts{"Speed": speedWords(c.AtTopSpeed)})
	l.add("minor", facts{"Limit": length(c.MinorUpTo), "As": string(c.MinorIn)})
	l.add("material.as", facts{"As": string(c.MaterialIn)})
	left := say("figures.nothing", nil)
	if len(c.NotBusy) > 0 {
		left = listed(c.NotBusy)
	}
	l.add("not.busy", facts{"Left": left})
}

func speedWords(top bool) string {
	if top {
		return say("speed.top", nil)
	}
	return say("speed.set", nil)
}
