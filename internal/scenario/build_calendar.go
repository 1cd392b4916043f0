package scenario

import (
	"slices"

	"tuckline/sim"
)

// stretch is one shift or cleaning of a week.
type stretch struct {
	// begin is in the time of the week, from Monday 00:00.
	begin, lasts sim.Micros
	times        *shiftTimes
}

// holds says whether a time of the week lies in it, and how far.
func (s *stretch) holds(t sim.Micros) (sim.Micros, bool) {
	after := (t - s.begin + weekLength) % weekLength
	return after, after < s.lasts
}

// shiftTimes are what shifts, overtime and cleaning have in common.
type shiftTimes struct {
	name  string
	where at
	// shift is its place among the shifts; -1 is cleaning.
	shift    int
	from, to sim.Micros
	lasts    sim.Micros
	days     []int
	// anyDay says that its days are those of the calendar and could not be read: one stands for them in checks.
	anyDay  bool
	startUp sim.Micros
	tidy    sim.Micros
	breaks  []shiftBreak
}

// shiftBreak is a break, from the beginning of its shift.
type shiftBreak struct {
	where        at
	begin, lasts sim.Micros
}

// stretches are all of a week.
func (t *shiftTimes) stretches() (all []stretch) {
	for _, day := range t.days {
		all = append(all, stretch{(sim.Micros(day)*dayLength + t.from) % weekLength, t.lasts, t})
	}
	return all
}

// calendar makes the working time.
func (b *resolver) calendar() {
	w := &b.words.Calendar
	if !w.given() {
		return
	}
	before := len(b.complaints)
	shifts, cleaning := b.shiftsOf(w), cleaningOf(w)
	b.checkStretches(shifts, cleaning)
	if b.broken || len(b.complaints) > before || b.wrongIn(w.path) || len(shifts) == 0 {
		return
	}
	week := &timeline{relief: w.During.Relief.value > 0, start: b.starts(shifts)}
	for _, s := range shifts {
		week.shifts = append(week.shifts, s.stretches()...)
	}
	for _, c := range cleaning {
		week.cleaning = append(week.cleaning, c.stretches()...)
	}
	b.s.Line.Calendar.Spans = week.spans()
	b.s.Calendar = calendarOf(&b.s.Line.Calendar, shifts, week.start)
	b.s.Calendar.Relief = int(w.During.Relief.value)
	b.s.Calendar.setDay(week)
	b.s.Calendar.setYear(&w.Hours)
	b.checkYear()
}

// shiftsOf reads the shifts with overtime as the last.
func (b *resolver) shiftsOf(w *calendarWords) (all []*shiftTimes) {
	if w.Shifts.given() && len(w.Shifts.list) == 0 {
		b.complain(w.Shifts.at, "there is no shift; write at least one, such as early: {from: 06:00, to: 14:00}")
	}
	for i := range w.Shifts.list {
		e := &w.Shifts.list[i]
		b.checkShiftName(e.place, e.name)
		days, anyDay := e.value.Days.days, false
		if !e.value.Days.given() {
			days = w.Days.days
			if anyDay = len(days) == 0; anyDay {
				days = []int{0}
			}
		}
		t := &shiftTimes{
			name: e.name, where: e.value.From.at, shift: i, days: days, anyDay: anyDay, from: e.value.From.time, to: e.value.To.time,
			startUp: micros(e.value.StartUp.value), tidy: micros(e.value.Tidy.value),
		}
		b.inShift(t, &e.value.From, &e.value.To, &e.value.Breaks)
		all = append(all, t)
	}
	for i := range w.Overtime.list {
		o := &w.Overtime.list[i]
		t := &shiftTimes{
			name: overtimeName, where: o.From.at, shift: len(w.Shifts.list), days: o.On.days, from: o.From.time, to: o.To.time,
			startUp: micros(o.StartUp.value), tidy: micros(o.Tidy.value),
		}
		b.inShift(t, &o.From, &o.To, &o.Breaks)
		all = append(all, t)
	}
	return all
}

// checkShiftName refuses names that mean something else where shifts are named.
func (b *resolver) checkShiftName(where at, name string) {
	if name == overtimeName {
		b.complain(where, "%q is a word of calendar; write overtime: {on: Sat, from: 06:00, to: 12:00} beside shifts, or name the shift otherwise", name)
	}
	if slices.Contains(crewWordNames(), name) {
		b.complain(where, "%q is a word of a crew and cannot be a shift", name)
	}
}

// cleaningOf reads when the line is cleaned.
func cleaningOf(w *calendarWords) (all []*shiftTimes) {
	for i := range w.Cleaning.list {
		c := &w.Cleaning.list[i]
		all = append(all, &shiftTimes{
			name: "cleaning", where: c.At.at, shift: -1, days: c.On.days, from: c.At.time % dayLength, lasts: micros(c.Lasts.value),
		})
	}
	return all
}

// starts is the time of the week at which a replication begins: as written, or the first shift of the first day.
func (b *resolver) starts(shifts []*shiftTimes) sim.Micros {
	w := &b.words.Run.Starts
	if w.given() && b.read(w.at) {
		return w.time
	}
	var first *stretch
	for _, t := range shifts {
		for _, s := range t.stretches() {
			if t.name != overtimeName && (first == nil || s.begin < first.begin) {
				first = &s
			}
		}
	}
	return first.begin
}

// checkYear warns of a year that no year has room for.
func (b *resolver) checkYear() {
	c := b.s.Calendar
	const weeks = 366.0 / 7
	if hours := &b.words.Calendar.Hours; hours.given() && hours.value > weeks*float64(c.Week) {
		b.warn("%s a year are %.1f weeks of %s; a year has 52.", hoursText(c.Year), float64(c.Year)/float64(c.Week), hoursText(c.Week))
	}
}
