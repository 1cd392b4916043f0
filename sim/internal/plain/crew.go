package plain

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// crew is a number of people with a queue of those who ask for them.
type crew struct {
	plan  *plan.Crew
	index int
	queue []request
	// people are those of the shift; leavers have been at work when theirs ended, and go home when it is done.
	people  []person
	leavers []leaver
	// there is how many are on duty by the calendar, rest the length of the break under way.
	there int
	rest  plan.Micros
	// tally is how many people do what.
	tally
	mark plan.Micros
	rec  *plan.CrewRecord
	// waits says that the first request of the queue lacks people, while people are given out.
	waits bool
	// others is where the other work of its people begins in timers.people, rests where its timers of late breaks do.
	others, rests int
}

// tally counts the people of a crew: idle, at work at the line and on the way to it, at other work; present are those on duty
// who are not in a break, late those who work though their shift is over or their break has begun.
type tally struct{ idle, atLine, walking, away, present, late int }

// whereabouts is where a person is.
type whereabouts uint8

const (
	home    whereabouts = iota
	idling              // there, and free
	atLine              // at work at the line, or on the way to it
	away                // at other work
	resting             // in a break of his own, that he could not take with the others
	inBreak             // in the break of all
)

// person is one of a crew.
type person struct {
	where whereabouts
	job   int // at the line
	other int // the other work that he does, and goes on with after a break; or none
	// owes is the length of the breaks that he has not had, late says that the others have theirs now.
	owes    plan.Micros
	late    bool
	walking bool
}

// leaver is a person at work whose shift is over.
type leaver struct {
	job     int
	walking bool
}

// job is the work of a stop or task: people at work are known by it.
func jobOf(task bool, id int) int {
	if task {
		return 2*id + 1
	}
	return 2 * id
}

// assign sends people: of the own crew first, then of those that help.
func (e *Engine) assign(c *crew, r request) {
	if r.elsewhere() {
		e.goElsewhere(c, r.timer)
		return
	}
	job := jobOf(r.task, r.spell)
	way := wayTo{request: r, from: e.now, crew: c.index}
	lacks := e.send(c, job, r.people, &way)
	for _, k := range c.plan.Helpers {
		if lacks == 0 {
			break
		}
		lacks = e.send(&e.crews[k], job, lacks, &way)
	}
	if way.lasts > 0 {
		e.setOut(&way)
		return
	}
	e.workBegins(&way)
}

// send lets idle people of a crew go to a job; it says how many are still lacking.
func (e *Engine) send(c *crew, job, people int, way *wayTo) (lacks int) {
	n := min(people, c.idle)
	if n == 0 {
		return people
	}
	e.clockCrew(c)
	lacks = people - n
	for i := 0; n > 0; i++ {
		if p := &c.people[i]; p.where == idling {
			p.where, p.job = atLine, job
			n--
		}
	}
	c.count()
	e.drawWay(c, way)
	return lacks
}

// free lets people go after work at the line, those of other crews included.
func (e *Engine) free(crew, job int) {
	c := &e.crews[crew]
	e.freeOf(c, job)
	for _, k := range c.plan.Helpers {
		e.freeOf(&e.crews[k], job)
	}
	e.asked = true
}

func (e *Engine) freeOf(c *crew, job int) {
	e.clockCrew(c)
	for i := range c.people {
		if p := &c.people[i]; p.where == atLine && p.job == job {
			e.freed(c, i)
		}
	}
	if len(c.leavers) > 0 {
		c.leavers = slices.DeleteFunc(c.leavers, func(l leaver) bool { return l.job == job })
	}
	c.count()
}

// count counts the people anew.
func (c *crew) count() {
	t := tally{atLine: len(c.leavers), late: len(c.leavers)}
	for i := range c.leavers {
		if c.leavers[i].walking {
			t.walking++
		}
	}
	for i := range c.people {
		switch p := &c.people[i]; p.where {
		case idling:
			t.idle++
		case away:
			t.away++
		case atLine:
			t.atLine++
			if p.walking {
				t.walking++
			}
			if p.late {
				t.late++
				t.present-- // the break is counted when he takes it
			}
		default:
			continue
		}
		t.present++
	}
	c.tally = t
}

// clockCrew adds the time of people up to now to the record.
func (e *Engine) clockCrew(c *crew) {
	dt := e.now - c.mark
	c.mark = e.now
	if dt == 0 {
		return
	}
	c.rec.Present += dt * plan.Micros(c.present)
	c.rec.Busy += dt * plan.Micros(c.atLine)
	c.rec.Walking += dt * plan.Micros(c.walking)
	c.rec.Overtime += dt * plan.Micros(c.late)
	c.rec.Elsewhere += dt * plan.Micros(c.away)
}

// connectCrews makes the people.
func (e *Engine) connectCrews() {
	for i := range e.crews {
		p := &e.plan.Crews[i]
		c := &e.crews[i]
		c.plan, c.index, c.people = p, i, make([]person, p.People)
		c.others, c.rests = none, none
		e.helps = e.helps || len(p.Helpers) > 0
		e.ways = e.ways || !p.Walk.IsZero() || !p.Response.IsZero()
	}
	for j := range e.timers.people {
		if p := &e.timers.people[j]; p.person == 0 {
			e.crews[p.crew].others = j
		}
	}
	for j := range e.timers.rests {
		if p := &e.timers.rests[j]; p.person == 0 {
			e.crews[p.crew].rests = j
		}
	}
}

// resetCrews lets everybody come who is there at the beginning of the calendar.
func (e *Engine) resetCrews(o Options) {
	for i := range e.crews {
		c := &e.crews[i]
		*c = crew{
			plan: c.plan, index: i, queue: c.queue[:0], people: c.people, leavers: c.leavers[:0], rec: &e.rec.Crews[i],
			others: c.others, rests: c.rests,
		}
		clear(c.people)
	}
	e.resetElsewhere(o.Seed, o.Replication)
	e.resetWays(o)
	for i := range e.crews {
		c := &e.crews[i]
		duty := c.plan.Duties[0]
		duty.New = true
		e.changeDuty(c, &duty)
	}
}
