package report

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// inputRows are the inputs with their units, an entry a row: whose, what, how much.
func inputRows(s *subject) [][]cell {
	rows := inputList{}
	rows.run(&s.Scenario.Run, s.Window.Many)
	for i := range s.Scenario.Line.Stations {
		rows.station(&s.Scenario.Line.Stations[i], &s.Scenario.Stations[i])
	}
	for i := range s.Scenario.Line.Buffers {
		rows.buffer(&s.Scenario.Line.Buffers[i], s.Scenario.Buffers[i].Unit)
	}
	for _, crew := range s.Scenario.Line.Crews {
		rows.crew(crew)
	}
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
		l.add("step", facts{"From": whole(float64(step.From)), "BackAt": whole(float64(step.BackAt)), "Rate": perMinute(float64(step.Cycle))})
	}
	l.flow(line, people)
	if line.RejectShare > 0 {
		l.add("rejects", facts{"Share": short3(100 * line.RejectShare), "Unit": people.GivesUnit})
	}
	if line.BlocksBefore {
		l.add("before", nil)
	}
	if line.StopsWith != "" {
		l.add("with", facts{"Station": line.StopsWith})
	}
	l.ways(line)
	l.scrap("after.stop", line.AfterStop)
	l.scrap("after.standstill", line.AfterStandstill)
	if line.Ramp > 0 {
		l.add("ramp", facts{"Time": length(line.Ramp)})
	}
	if line.Group.Every > 0 {
		l.add("group", facts{"Every": whole(float64(line.Group.Every)), "Adds": length(line.Group.Adds)})
	}
	for _, stop := range line.Stops {
		l.stop(stop, people.GivesUnit)
	}
	for k := range line.Materials {
		l.material(&line.Materials[k], &people.Materials[k])
	}
}

func (l *inputList) stop(stop sim.Stop, unit string) {
	every := ""
	switch stop.Clock {
	case sim.CycleClock:
		every = say("input.clock.cycles", facts{"Every": lawWords(stop.Every, 1, "")})
	case sim.PieceClock:
		every = say("input.clock.pieces", facts{"Every": lawWords(stop.Every, 1, unit)})
	case sim.RunningClock:
		every = say("input.clock.running", facts{"Every": lawWords(stop.Every, float64(sim.Minute), "min")})
	case sim.CalendarClock:
		every = say("input.clock.calendar", facts{"Every": lawWords(stop.Every, float64(sim.Minute), "min")})
	}
	factor := ""
	if stop.RateFactor != 0 && stop.RateFactor != 1 {
		factor = short3(stop.RateFactor)
	}
	l.named(say("input.stop", facts{"Name": stop.Name}), "stop", facts{
		"Every": every, "Lasts": lawWords(stop.Lasts, float64(sim.Minute), "min"), "Crew": crewWords(stop.Crew),
		"Class": stop.Class.String(), "Factor": factor, "Scraps": stop.Scraps, "Renews": listed(stop.Renews),
	})
}

func (l *inputList) material(m *sim.Material, people *scenario.Material) {
	amount := func(n int64) string {
		if people.Unit == "m" {
			return short3(float64(n)/1e6) + thin + "m"
		}
		return whole(float64(n)) + " " + people.Unit
	}
	perCycle := amount(m.PerCycle)
	if people.Unit == "m" {
		perCycle = short3(float64(m.PerCycle)/1e3) + thin + "mm"
	}
	alarm := ""
	if people.AlarmAt >= 0 && m.FilledInTime {
		alarm = amount(people.AlarmAt)
	}
	l.named(say("input.material", facts{"Name": m.Name}), "material", facts{
		"Kind": people.Kind, "Amount": amount(m.Amount), "PerCycle": perCycle, "Refill": amount(m.Refill),
		"Lasts": lawWords(m.Lasts, float64(sim.Minute), "min"), "Crew": crewWords(m.Crew), "Alarm": alarm,
	})
}

func (l *inputList) buffer(b *sim.Buffer, unit string) {
	l.of = b.Name
	l.add("holds", facts{"Unlimited": b.Holds == sim.Unlimited, "Holds": whole(float64(b.Holds)), "Unit": unit})
	if b.Transit > 0 {
		l.add("transit", facts{"Time": length(b.Transit)})
	}
	if b.StopUpstream > 0 {
		l.add("stop.upstream", facts{"Level": whole(float64(b.StopUpstream)), "Unit": unit})
	}
	if b.Restart.On {
		l.add("restart.upstream", facts{"Level": whole(float64(b.Restart.Level)), "Unit": unit})
	}
	if b.Start.On {
		l.add("start.downstream", facts{"Level": whole(float64(b.Start.Level)), "Unit": unit})
	}
	if b.Turns.Alternate || b.Turns.First != "" {
		l.add("turns", facts{"First": b.Turns.First})
	}
	if b.AtStart > 0 {
		l.add("at.start", facts{"Level": whole(float64(b.AtStart)), "Unit": unit})
	}
}

func (l *inputList) crew(c sim.Crew) {
	l.of = c.Name
	l.add("people", facts{"People": c.People})
	if c.ElsewhereShare > 0 {
		l.add("elsewhere", facts{"Share": short3(100 * c.ElsewhereShare), "Spell": length(c.ElsewhereSpell)})
	}
}
