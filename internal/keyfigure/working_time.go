package keyfigure

import (
	"slices"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// WorkingTime is what the calendar gives; nil without one. Times are in hours.
type WorkingTime struct {
	Shifts []ShiftTime
	// Week and Year are scheduled, NetWeek and NetYear what is left to work in: without the breaks in which the line
	// stands, start-up, tidy and cleaning.
	Week, NetWeek, Year, NetYear float64
	// Breaks and Cleaning are scheduled time of a week in which people rest, and in which the line is cleaned.
	Breaks, Cleaning float64
	// Relief is how many people come for the breaks.
	Relief int
	// Starts is when a replication begins.
	Starts string
}

// ShiftTime is a shift: scheduled and net hours of one, on average over the week.
type ShiftTime struct {
	Name, When     string
	Scheduled, Net float64
}

// Staff is how many people of a crew there are, and the way to their work.
type Staff struct {
	Crew string
	// People is the number on every shift, where ByShift is nil; else that is by shift of WorkingTime.
	People  int
	ByShift []int
	// Walk and Response are means in seconds; 0 is none.
	Walk, Response float64
	CanAlso        []string
}

// workingTime derives hours from the calendar.
func workingTime(s *scenario.Scenario) *WorkingTime {
	c := s.Calendar
	if c == nil {
		return nil
	}
	hours := func(t sim.Micros) float64 { return float64(t) / float64(sim.Hour) }
	w := &WorkingTime{
		Week: hours(c.Week), NetWeek: hours(c.NetWeek), Year: hours(c.Year), NetYear: hours(c.NetYear),
		Relief: c.Relief, Starts: s.Run.Starts,
	}
	for i := range c.Shifts {
		one := &c.Shifts[i]
		w.Shifts = append(w.Shifts, ShiftTime{one.Name, one.When(), hours(one.Scheduled), hours(one.Net)})
	}
	for _, span := range s.Line.Calendar.Spans {
		if span.Crews == sim.CrewsRest {
			w.Breaks += hours(span.Lasts)
		}
		if span.Name == "cleaning" {
			w.Cleaning += hours(span.Lasts)
		}
	}
	return w
}

// staff derives the people of every crew but those who come for breaks.
func staff(line *sim.Line) (all []Staff) {
	for i := range line.Crews {
		crew := &line.Crews[i]
		if crew.Relief {
			continue
		}
		one := Staff{Crew: crew.Name, People: crew.People, ByShift: crew.ByShift, CanAlso: crew.CanAlso}
		if len(one.ByShift) > 0 && slices.Min(one.ByShift) == slices.Max(one.ByShift) {
			one.People, one.ByShift = one.ByShift[0], nil
		}
		if !crew.Walk.IsZero() {
			one.Walk = crew.Walk.Mean() / float64(sim.Second)
		}
		if !crew.Response.IsZero() {
			one.Response = crew.Response.Mean() / float64(sim.Second)
		}
		all = append(all, one)
	}
	return all
}

// fewest is the smallest number of people of a crew on a shift on which there are any.
func fewest(crew *sim.Crew) int {
	least := 0
	for _, n := range crew.ByShift {
		if n > 0 && (least == 0 || n < least) {
			least = n
		}
	}
	if least == 0 {
		return crew.People
	}
	return least
}
