package plain

import (
	"math"
	"strconv"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// elsewhere is one person's other work: spells of it, and gaps between them. It stands still while he is
// not on duty.
type elsewhere struct {
	crew, person int
	stream       draw.Stream
	// away says that a spell is under way, asked that one is waiting for somebody since then, or Never.
	away  bool
	asked plan.Micros
	// frozen: it stands still, with so much left of the spell or the gap.
	frozen bool
	left   plan.Micros
}

// goElsewhere lets somebody begin a spell of other work.
func (e *Engine) goElsewhere(c *crew, timer int) {
	e.clockCrew(c)
	j := timer - e.timers.elsewhere
	o := &e.timers.people[j]
	for i := range c.people {
		if p := &c.people[i]; p.where == idling {
			p.where, p.other = away, j
			break
		}
	}
	o.away, o.asked = true, plan.Never
	c.count()
	e.cal.set(timer, e.now+exponential(c.plan.Spell, o.stream.Uniform()))
}

// elsewhereDue ends a spell of other work, or asks for a person to do the next.
func (e *Engine) elsewhereDue(timer int) {
	j := timer - e.timers.elsewhere
	o := &e.timers.people[j]
	c := &e.crews[o.crew]
	e.asked = true
	if !o.away {
		e.cal.set(timer, plan.Never)
		o.asked = e.now
		c.queue = append(c.queue, otherRequest(e.now, timer))
		return
	}
	e.clockCrew(c)
	o.away = false
	for i := range c.people {
		if p := &c.people[i]; p.where == away && p.other == j {
			p.where, p.other = idling, none
		}
	}
	c.count()
	e.cal.set(timer, e.now+exponential(c.plan.Gap(), o.stream.Uniform()))
}

func otherRequest(at plan.Micros, timer int) request {
	return request{priority: usualPriority, at: at, station: none, people: 1, timer: timer}
}

// otherWork lets the other work of those on duty go on, and that of the others stand still.
func (e *Engine) otherWork(c *crew) {
	if c.others == none {
		return
	}
	for i := range c.people {
		timer := e.timers.elsewhere + c.others + i
		o := &e.timers.people[c.others+i]
		switch on := i < c.there; {
		case on == !o.frozen:
		case on:
			o.frozen = false
			if o.asked != plan.Never {
				c.queue = append(c.queue, otherRequest(o.asked, timer))
			} else {
				e.cal.set(timer, e.now+o.left)
			}
		default:
			o.frozen = true
			if o.asked != plan.Never {
				c.forget(timer)
			} else {
				o.left = e.cal.next[timer] - e.now
				e.cal.set(timer, plan.Never)
			}
		}
	}
}

// forget takes the request of other work out of the queue.
func (c *crew) forget(timer int) {
	for i := range c.queue {
		if r := &c.queue[i]; r.elsewhere() && r.timer == timer {
			c.unqueue(i)
			return
		}
	}
}

// otherOf is the other work of a person that is under way, or none.
func (e *Engine) otherOf(c *crew, person int) int {
	if c.others == none || !e.timers.people[c.others+person].away {
		return none
	}
	return c.others + person
}

// resetElsewhere starts the other work of everybody as it is at any time: with
// probability share a person is away. The one number is used twice.
func (e *Engine) resetElsewhere(seed uint64, replication int) {
	for j := range e.timers.people {
		o := &e.timers.people[j]
		c := &e.crews[o.crew]
		o.frozen, o.asked = false, plan.Never
		o.stream = draw.NewStream(seed, replication, c.plan.Name, "busy elsewhere", strconv.Itoa(o.person))
		u, share := o.stream.Uniform(), c.plan.Share
		o.away = u < share
		if o.away {
			e.cal.set(e.timers.elsewhere+j, exponential(c.plan.Spell, u/share))
		} else {
			e.cal.set(e.timers.elsewhere+j, exponential(c.plan.Gap(), (u-share)/(1-share)))
		}
	}
}

// exponential is a time of this mean for a uniform number u, by inversion.
func exponential(mean plan.Micros, u float64) plan.Micros {
	return max(1, plan.Micros(math.Round(-float64(mean)*math.Log1p(-u))))
}
