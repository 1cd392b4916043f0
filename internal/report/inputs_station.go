package report

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// format says what people know of a station and the model does not need.
func (l *inputList) format(people *scenario.Station) {
	if people.Forming != "" {
		l.add("forming", facts{"Forming": people.Forming})
	}
	if web := people.Web; web != (scenario.Web{}) {
		l.add("web", facts{"Width": millimetres(web.Width), "Index": millimetres(web.Index), "Across": web.Across, "Along": web.Along})
	}
	if people.Guaranteed > 0 {
		l.add("guaranteed", facts{"Share": short3(100 * people.Guaranteed)})
	}
	if sealing := people.Sealing; sealing.DwellShare > 0 {
		f := facts{"Share": short3(sealing.DwellShare), "Min": "", "Max": ""}
		if sealing.DwellMax > 0 {
			f["Min"], f["Max"] = short3(float64(sealing.DwellMin)/float64(sim.Second)), short3(float64(sealing.DwellMax)/float64(sim.Second))
		}
		l.add("sealing", f)
	}
}

// millimetres writes a length of the engine, or nothing where none is given.
func millimetres(of sim.Micrometres) string {
	if of == 0 {
		return ""
	}
	return short3(float64(of)/1e3) + thin + "mm"
}

// rejects are all ways to lose pieces that are written, apart from scrap.
func (l *inputList) rejects(line *sim.Station, unit string) {
	if line.RejectShare > 0 {
		l.add("rejects", facts{"Share": short3(100 * line.RejectShare), "Unit": unit})
	}
	if runs := line.Runs; runs.Enter > 0 {
		l.add("runs", facts{"Enter": short3(1000 * runs.Enter), "Thousand": whole(1000), "Share": short3(100 * runs.Share), "Length": short3(runs.Length), "Unit": unit})
	}
	if line.RejectsAfter > 0 {
		l.add("rejects.after", facts{"Cycles": whole(float64(line.RejectsAfter))})
	}
	if rule := line.RejectStop; rule.After > 0 {
		l.add("reject.stop", facts{"After": whole(float64(rule.After)), "Lasts": timeWords(rule.Lasts), "Crew": crewWords(rule.Crew)})
	}
	if line.NoReads > 0 {
		l.add("no.reads", facts{"Share": short3(100 * line.NoReads), "Unit": unit})
	}
	if line.LostPerStop > 0 {
		l.add("lost.per.stop", facts{"Pieces": whole(float64(line.LostPerStop)), "Unit": unit})
	}
	if line.EmptyPockets.On {
		l.add("pockets", facts{"Most": whole(float64(line.EmptyPockets.Most))})
	}
}

func (l *inputList) check(check sim.Check, unit string) {
	l.named(say("input.check", facts{"Name": check.Name}), "check", facts{
		"Every": clockWords(check.Every, check.Clock, unit), "Takes": whole(float64(check.Takes)), "Unit": unit,
		"Lasts": timeWords(check.Lasts), "Crew": crewWords(check.Crew),
	})
}
