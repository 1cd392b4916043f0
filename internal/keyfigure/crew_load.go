package keyfigure

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/sim"
)

// CrewLoad is the work that a line asks of a crew, each station running alone at set speed: how
// often × how long, the walk there included, × how many people. Waiting is no work, nor is the time until somebody
// responds, who was free till then.
type CrewLoad struct {
	Name string
	// People is their number; where it differs by shift the smallest that is there.
	People int
	// Asked is in persons, busy all the time; Elsewhere of it is other work outside the line. Share is Asked/People.
	Asked, Elsewhere, Share float64
	// Parts are the causes, the greatest first.
	Parts []CrewPart
}

// CrewPart is the part of one cause, in persons.
type CrewPart struct {
	Station, Cause string
	Asked          float64
}

// addCrews derives the load of every crew.
func (f *Figures) addCrews(line *sim.Line) {
	for k := range line.Crews {
		crew := &line.Crews[k]
		if crew.Relief {
			continue
		}
		people := fewest(crew)
		load := CrewLoad{Name: crew.Name, People: people, Elsewhere: float64(people) * crew.ElsewhereShare}
		load.Asked = load.Elsewhere
		for i := range line.Stations {
			for _, part := range f.Stations[i].asks(&line.Stations[i], crew) {
				load.Parts = append(load.Parts, part)
				load.Asked += part.Asked
			}
		}
		slices.SortStableFunc(load.Parts, func(a, b CrewPart) int {
			switch {
			case a.Asked > b.Asked:
				return -1
			case a.Asked < b.Asked:
				return 1
			}
			return 0
		})
		load.Share = ratio(load.Asked, float64(people))
		f.Crews = append(f.Crews, load)
	}
}

// asks are the parts of a station.
func (s *Station) asks(line *sim.Station, crew *sim.Crew) (parts []CrewPart) {
	walk := 0.0
	if !crew.Walk.IsZero() {
		walk = crew.Walk.Mean() / minute
	}
	// add adds work that comes so many times a minute and lasts so many minutes
	add := func(cause string, w sim.Work, times, lasts float64) {
		if w.Crew == crew.Name && times*lasts > 0 {
			parts = append(parts, CrewPart{s.Name, cause, float64(max(1, w.People)) * times * (lasts + walk)})
		}
	}
	cycles := s.Effective.Cycles // a minute
	for k := range s.Stops {
		stop := &s.Stops[k]
		share := stop.DownShare * s.Alone
		if stop.Clock == "calendar" {
			share = ratio(stop.Lasts, stop.Minutes+stop.Lasts)
		}
		add(stop.Name, crewOf(line, stop.Name), ratio(share, stop.Lasts), stop.Lasts)
	}
	for k := range line.Materials {
		m, words := &line.Materials[k], &s.Materials[k]
		changes := cycles * ratio(words.PerCycle, words.Refill)
		add(m.Name, m.Crew, changes, words.Lasts)
		if m.Prepare.On {
			add("next "+m.Name, m.Prepare.Crew, changes, m.Prepare.Lasts.Mean()/minute)
		}
	}
	for k := range line.Checks {
		c := &line.Checks[k]
		tests := cycles * float64(s.Gives) * s.sampled(c, 0) / float64(max(1, c.Takes))
		add(c.Name, c.Crew, tests, c.Lasts.Mean()/minute)
	}
	return parts
}

// crewOf is who works on a stop of a name.
func crewOf(line *sim.Station, name string) sim.Work {
	for i := range line.Stops {
		if line.Stops[i].Name == name {
			return line.Stops[i].Crew
		}
	}
	for i := range line.Materials {
		if m := &line.Materials[i]; sim.MisPickName(m.Name) == name {
			return m.MisPicks.Crew
		}
	}
	if name == sim.RejectStopName {
		return line.RejectStop.Crew
	}
	return sim.Work{}
}

// persons is a number of people with their noun.
func persons(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d people", n)
}

// crewLines are the loads of all crews.
func (f *Figures) crewLines() (out []item) {
	for i := range f.Crews {
		c := &f.Crews[i]
		var parts []string
		for _, p := range c.Parts[:min(3, len(c.Parts))] {
			parts = append(parts, fmt.Sprintf("%s at %s %s", p.Cause, p.Station, percent(p.Asked)))
		}
		text := fmt.Sprintf("%s of %s", percent(c.Share), persons(c.People))
		if c.Elsewhere > 0 {
			text += fmt.Sprintf(", %s of it elsewhere", percent(ratio(c.Elsewhere, float64(c.People))))
		}
		if len(parts) > 0 {
			text += "; of one person ask " + strings.Join(parts, ", ")
		}
		out = append(out, item{c.Name, text})
	}
	return out
}

// writeCrews writes the loads of all crews.
func (f *Figures) writeCrews(b *strings.Builder) {
	lines := f.crewLines()
	if len(lines) == 0 {
		return
	}
	walks := ""
	if slices.ContainsFunc(f.Staff, func(s Staff) bool { return s.Walk > 0 }) {
		walks = ", walks included"
	}
	b.WriteString("\nWork asked of crews" + walks + ", every station running alone at set speed\n")
	writeLines(b, lines)
}

// overloaded warns of crews that are asked for more than they are.
func (f *Figures) overloaded() (all []string) {
	for i := range f.Crews {
		if c := &f.Crews[i]; c.Share > 1 {
			all = append(all, fmt.Sprintf("More work is asked of %s than %s can do: %s of their time if every station runs alone at set speed, most by %s at %s.",
				c.Name, persons(c.People), percent(c.Share), c.most().Cause, c.most().Station))
		}
	}
	return all
}

func (c *CrewLoad) most() CrewPart {
	if len(c.Parts) == 0 {
		return CrewPart{Station: "other work", Cause: "other work"}
	}
	return c.Parts[0]
}

// crewRows are the figures of the crews.
func (l *list) crewRows(f *Figures) {
	for i := range f.Crews {
		c := &f.Crews[i]
		l.group = c.Name
		l.share("work asked of it", c.Share)
		for _, p := range c.Parts {
			l.share("of one person: "+p.Cause+" at "+p.Station, p.Asked)
		}
	}
}
