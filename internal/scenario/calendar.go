package scenario

import "tuckline/sim"

// Calendar is the working time as people read it; Line.Calendar says the same to the engine. A nil calendar is
// none: the line works always, and the answers of its methods are empty.
type Calendar struct {
	// Shifts are in the order of sim.Span.Shift and sim.Crew.ByShift. Overtime is the last, if there is any.
	Shifts []Shift
	// Week, Day and Year are the scheduled time of a calendar week, of the first working day of the week, and of a
	// year: as written, or 52 weeks. Cleaning outside of the shifts is scheduled time.
	Week, Day, Year sim.Micros
	// NetWeek and NetYear are the scheduled time in which the line may work: without breaks in which it stands,
	// start-up, tidy and cleaning.
	NetWeek, NetYear sim.Micros
	// Relief is how many people come during breaks, so that the line works on; 0 means that it stands.
	Relief int

	// start is the time of the week, from Monday 00:00, at which a replication begins.
	start sim.Micros
}

// Shift is a shift of every week.
type Shift struct {
	Name string
	// From and To are times of the day as written; a To that is not after From lies on the next day. Of overtime they
	// are those of the first one.
	From, To sim.Micros
	// Days are those on which it begins, from 0, Monday, rising.
	Days []int
	// Scheduled and Net are the length of one and the time of it in which the line may work, on average over the
	// week. A whole shift of a record has as much scheduled time; less has one that was under way at the start.
	Scheduled, Net sim.Micros
	// AWeek is how many there are in a week.
	AWeek int
	// Overtime says that it is no regular shift, Several that its times differ by day.
	Overtime, Several bool
}

// When is the days and the times as people read them: "Mon-Fri 06:00 to 14:00".
func (s *Shift) When() string {
	if s.Several {
		return daysText(s.Days)
	}
	return daysText(s.Days) + " " + clockWords(s.From) + " to " + clockWords(s.To)
}

// MeanShift is the mean scheduled time of the regular shifts of a week; 0 without a calendar.
func (c *Calendar) MeanShift() sim.Micros {
	if c == nil {
		return 0
	}
	var sum, many sim.Micros
	for i := range c.Shifts {
		if s := &c.Shifts[i]; !s.Overtime {
			sum += s.Scheduled * sim.Micros(s.AWeek)
			many += sim.Micros(s.AWeek)
		}
	}
	return sum / max(1, many)
}

// AnswerSpan is the scheduled time of the span of the answer: an hour; with a calendar the mean shift or the week;
// without one the measured window stands for a shift or a week.
func (s *Scenario) AnswerSpan() sim.Micros {
	switch {
	case s.Answer.Per == "shift" && s.Calendar != nil:
		return s.Calendar.MeanShift()
	case s.Answer.Per == "week" && s.Calendar != nil:
		return s.Calendar.Week
	case s.Answer.Per == "hour":
		return sim.Hour
	}
	return s.Run.Measure
}

// ScheduledWarmUp and ScheduledMeasure are the scheduled time before the measured window and in it; without a
// calendar they are Run.WarmUp and Run.Measure.
func (s *Scenario) ScheduledWarmUp() sim.Micros { return s.Line.Calendar.Scheduled(s.Run.WarmUp) }

// ScheduledMeasure is explained with ScheduledWarmUp.
func (s *Scenario) ScheduledMeasure() sim.Micros {
	return s.Line.Calendar.Scheduled(s.Run.WarmUp+s.Run.Measure) - s.ScheduledWarmUp()
}
