package scenario

import "tuckline/sim"

// usualPriority is that of a stop or task that names none; smaller goes first.
const usualPriority = 5

// crews makes the crews of the line.
func (b *resolver) crews() {
	for _, e := range b.words.Crews.list {
		w := e.value
		b.s.Line.Crews = append(b.s.Line.Crews, sim.Crew{
			Name: e.name, People: max(1, int(w.People.value)),
			ElsewhereShare: w.BusyElsewhere.Share.value, ElsewhereSpell: micros(w.BusyElsewhere.Spell.value),
		})
	}
}

// work resolves who is asked.
func (b *resolver) work(need *crewNeed, priority int) sim.Work {
	if priority == 0 {
		priority = usualPriority
	}
	if !need.given() || need.crew == "" {
		return sim.Work{Priority: priority}
	}
	var names []string
	for i := range b.s.Line.Crews {
		crew := &b.s.Line.Crews[i]
		names = append(names, crew.Name)
		if crew.Name != need.crew {
			continue
		}
		if need.people > crew.People {
			b.complain(need.at, "%d of %s are asked for, but there are only %d; the work would never begin", need.people, crew.Name, crew.People)
		}
		return sim.Work{Crew: crew.Name, People: need.people, Priority: priority}
	}
	b.noSuchName(need.at, need.crew, "crew", names)
	return sim.Work{Priority: priority}
}
