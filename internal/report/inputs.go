package report

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// inputRows are the inputs with their units, an entry a row: whose, what, how much.
func inputRows(s *subject) [][]cell {
	rows := inputList{}
	rows.run(&s.Scenario.Run, s.Window.Runs)
	rows.calendar(s.Scenario.Calendar)
	rows.orders(s.Scenario.Orders, &s.Scenario.Line, s.Scenario.Answer.Unit)
	for i := range s.Scenario.Line.Stations {
		rows.station(&s.Scenario.Line.Stations[i], &s.Scenario.Stations[i])
	}
	for i := range s.Scenario.Line.Buffers {
		rows.buffer(&s.Scenario.Line.Buffers[i], &s.Scenario.Buffers[i])
	}
	for _, crew := range s.Scenario.Line.Crews {
		rows.crew(crew)
		rows.presence(&crew, s.Scenario.Calendar)
	}
	rows.agreed(s.Scenario.Agreement)
	rows.counted(&s.Scenario.KeyFigures)
	return rows.rows
}

type inputList struct {
	of   string
	rows [][]cell
}

// add says one input; what it is comes from the words of that name.
func (l *inputList) add(word string, f facts) {
	l.named(say("input."+word, nil), word, f)
}

func (l *inputList) named(name, word string, f facts) {
	l.rows = append(l.rows, []cell{text(l.of), text(name), text(say("input."+word+".value", f))})
}

func (l *inputList) station(line *sim.Station, people *scenario.Station) {
	l.of = line.Name
	perMinute := func(cycle float64) string { return short3(float64(sim.Minute) / cycle) }
	l.add("cycle", facts{"Rate": perMinute(people.SetCycle), "Law": lawWords(line.Cycle, float64(sim.Second), "s")})
	if people.TopCycle < people.SetCycle {
		l.add("top", facts{"Rate": perMinute(people.TopCycle)})
	}
	for _, step := range line.Steps {
		f := facts{"From": whole(float64(step.From)), "BackAt": whole(float64(step.BackAt)), "Rate": perMinute(float64(step.Cycle)), "Delay": ""}
		if step.Delay > 0 {
			f["Delay"] = length(step.Delay)
		}
		l.add("step", f)
	}
	l.flow(line, people)
	l.format(people)
	l.rejects(line, people.GivesUnit)
	if line.BlocksBefore {
		l.add("before", nil)
	}
	if line.StopsWith != "" {
		l.add("with", facts{"Station": line.StopsWith})
	}
	l.ways(line)
	l.atOrderEnd(line)
	l.scrap("after.stop", line.AfterStop)
	l.scrap("after.standstill", line.AfterStandstill)
	l.lasting("ramp", line.Ramp)
	l.lasting("heat.recovery", line.HeatRecovery)
	l.lasting("heat.up", line.HeatUp)
	if line.Group.Every > 0 {
		l.add("group", facts{"Every": whole(float64(line.Group.Every)), "Adds": length(line.Group.Adds)})
	}
	for _, stop := range line.Stops {
		l.stop(stop, people.GivesUnit)
	}
	for k := range line.Materials {
		l.material(&line.Materials[k], &people.Materials[k])
	}
	for _, check := range line.Checks {
		l.check(check, people.GivesUnit)
	}
}

// lasting is an input that is a time, where there is one.
func (l *inputList) lasting(word string, time sim.Micros) {
	if time > 0 {
		l.add(word, facts{"Time": length(time)})
	}
}

// clockWords say how often something comes, in the unit of its clock.
func clockWords(every sim.Law, clock sim.Clock, unit string) string {
	switch clock {
	case sim.CycleClock:
		return say("input.clock.cycles", facts{"Every": lawWords(every, 1, say("input.cycles", nil))})
	case sim.PieceClock:
		return say("input.clock.pieces", facts{"Every": lawWords(every, 1, unit)})
	case sim.RunningClock:
		return say("input.clock.running", facts{"Every": timeWords(every)})
	default:
		return say("input.clock.calendar", facts{"Every": timeWords(every)})
	}
}

// timeWords say a law of time: seconds below a minute, else minutes.
func timeWords(law sim.Law) string {
	if law.Mean() < float64(sim.Minute) {
		return lawWords(law, float64(sim.Second), "s")
	}
	return lawWords(law, float64(sim.Minute), "min")
}

func (l *inputList) stop(stop sim.Stop, unit string) {
	factor := ""
	if stop.RateFactor != 0 && stop.RateFactor != 1 {
		factor = short3(stop.RateFactor)
	}
	l.named(say("input.stop", facts{"Name": stop.Name}), "stop", facts{
		"Every": clockWords(stop.Every, stop.Clock, unit), "Lasts": timeWords(stop.Lasts), "Crew": crewWords(stop.Crew),
		"Class": stop.Class.String(), "Factor": factor, "Scraps": stop.Scraps, "Renews": listed(stop.Renews),
	})
}

func (l *inputList) crew(c sim.Crew) {
	l.of = c.Name
	l.add("people", facts{"People": c.People})
	if c.ElsewhereShare > 0 {
		l.add("elsewhere", facts{"Share": short3(100 * c.ElsewhereShare), "Spell": length(c.ElsewhereSpell)})
	}
}
