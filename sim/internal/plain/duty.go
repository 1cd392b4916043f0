package plain

import "tuckline/sim/internal/plan"

// restTimer is the timer of a late break.
type restTimer struct{ crew, person int }

// changeDuty follows the calendar: a shift ends or begins, a break begins or is over.
func (e *Engine) changeDuty(c *crew, d *plan.Duty) {
	e.clockCrew(c)
	switch {
	case d.New:
		e.goHome(c)
		e.come(c, d)
	case d.Break > 0 && c.rest == 0:
		e.breakBegins(c, d)
	case d.Break == 0 && c.rest > 0:
		e.breakEnds(c, d)
	}
	c.there = d.There
	e.otherWork(c)
	c.count()
	e.asked = true
}

// goHome ends a shift: who is at work goes home when it is done.
func (e *Engine) goHome(c *crew) {
	for i := range c.people {
		e.leave(c, i)
	}
}

// leave ends the shift of a person.
func (e *Engine) leave(c *crew, i int) {
	p := &c.people[i]
	if p.where == atLine {
		c.leavers = append(c.leavers, leaver{job: p.job, walking: p.walking})
	}
	if p.where == resting {
		e.cal.set(e.timers.rest+c.rests+i, plan.Never)
	}
	*p = person{other: none}
}

// come begins a shift, all of which is there; one that begins with a break has only those who stay in it.
func (e *Engine) come(c *crew, d *plan.Duty) {
	c.rest = d.Break
	for i := range d.Whole {
		e.toDuty(c, i)
		if i >= d.There {
			c.people[i].where = inBreak
		}
	}
}

// toDuty lets a person begin: idle, or with the other work that was under way.
func (e *Engine) toDuty(c *crew, i int) {
	c.people[i] = person{where: idling, other: e.otherOf(c, i)}
	if c.people[i].other != none {
		c.people[i].where = away
	}
}

// breakBegins sends into the break who is not to stay: of those who stay the ones come first whose other work goes on, then
// who is free, then who is at work. Others who are at work take their break when that is done.
func (e *Engine) breakBegins(c *crew, d *plan.Duty) {
	c.rest = d.Break
	places := d.There
	stays := func() bool {
		places--
		return places >= 0
	}
	for i := range c.people {
		if p := &c.people[i]; p.where == away && (p.other-c.others >= d.There || !stays()) {
			p.where = inBreak
		}
	}
	for i := range c.people {
		if p := &c.people[i]; p.where == idling && !stays() {
			p.where = inBreak
		}
	}
	for i := range c.people {
		if p := &c.people[i]; p.where == atLine && !stays() {
			p.late = true
			p.owes += d.Break
		}
	}
	for i := range c.people[:d.Whole] {
		if c.people[i].where == home && stays() {
			e.toDuty(c, i) // for the breaks of the others only
		}
	}
}

// breakEnds brings back who has had his break; who came for it only goes.
func (e *Engine) breakEnds(c *crew, d *plan.Duty) {
	c.rest = 0
	for i := range c.people {
		p := &c.people[i]
		p.late = false
		switch {
		case i >= d.Whole && p.where != home:
			e.leave(c, i)
		case p.where == inBreak && p.other != none:
			p.where = away
		case p.where == inBreak:
			p.where = idling
		}
	}
}

// freed is what a person does who has been at work: he takes the breaks that he has missed, unless he is needed to stay.
func (e *Engine) freed(c *crew, i int) {
	p := &c.people[i]
	if p.late && c.present < c.there {
		p.owes -= c.rest
	}
	p.where, p.walking, p.late, p.other = idling, false, false, none
	if p.owes > 0 {
		p.where = resting
		e.cal.set(e.timers.rest+c.rests+i, e.now+p.owes)
		p.owes = 0
	}
	if c.rest > 0 {
		c.count() // for the next who is freed
	}
}

// restDue ends a late break; if all have theirs he stays with them until they come back.
func (e *Engine) restDue(timer int) {
	t := &e.timers.rests[timer-e.timers.rest]
	c := &e.crews[t.crew]
	e.clockCrew(c)
	e.cal.set(timer, plan.Never)
	c.people[t.person].where = idling
	if c.rest > 0 && c.present >= c.there {
		c.people[t.person].where = inBreak
	}
	c.count()
	e.asked = true
}
