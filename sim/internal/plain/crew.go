package plain

import (
	"math"
	"strconv"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// crew is a number of people with a queue of those who ask for them.
type crew struct {
	plan  *plan.Crew
	idle  int
	queue []request
	// atLine and away are people at work, at the line and elsewhere.
	atLine, away int
	mark         plan.Micros
	rec          *plan.CrewRecord
}

// request asks for people: for a stop, for a task, or for other work outside the line.
type request struct {
	priority       int
	at             plan.Micros
	station, cause int // station is none for other work
	task           bool
	spell          int // or the task
	people         int
	timer          int // of other work
}

// usualPriority is that of other work, in the middle from 1 to 9.
const usualPriority = 5

// elsewhere is one person's other work: spells of it, and gaps between them.
type elsewhere struct {
	crew, person int
	stream       draw.Stream
	away         bool
}

// request puts a request into the queue of its crew.
func (e *Engine) request(work *plan.Work, r request) {
	c := &e.crews[work.Crew]
	c.queue = append(c.queue, r)
	e.asked = true
}

// giveOut gives people to requests in order: priority, time, name of station and
// of stop or task. The first waits until it has all it asks for; nobody goes ahead of it.
func (e *Engine) giveOut() {
	e.asked = false
	for i := range e.crews {
		c := &e.crews[i]
		for len(c.queue) > 0 {
			first := e.firstRequest(c)
			r := c.queue[first]
			if r.people > c.idle {
				break
			}
			c.queue[first] = c.queue[len(c.queue)-1]
			c.queue = c.queue[:len(c.queue)-1]
			e.assign(c, r)
		}
	}
}

func (e *Engine) firstRequest(c *crew) int {
	first := 0
	for j := 1; j < len(c.queue); j++ {
		if e.asksBefore(&c.queue[j], &c.queue[first]) {
			first = j
		}
	}
	return first
}

// asksBefore says that request a goes before b. Other work has no name and goes before
// stations that asked at the same time.
func (e *Engine) asksBefore(a, b *request) bool {
	switch {
	case a.priority != b.priority:
		return a.priority < b.priority
	case a.at != b.at:
		return a.at < b.at
	case a.elsewhere() || b.elsewhere():
		return a.elsewhere() && (!b.elsewhere() || a.timer < b.timer)
	case e.rank(a) != e.rank(b):
		return e.rank(a) < e.rank(b)
	}
	return e.causeName(a) < e.causeName(b)
}

// elsewhere says that it asks for other work outside the line.
func (r *request) elsewhere() bool { return r.station == none && !r.task }

// rank is the place of the name of the station that asks among all names.
func (e *Engine) rank(r *request) int {
	if r.task {
		return e.plan.Tasks[r.spell].Rank
	}
	return e.plan.Stations[r.station].Causes[r.cause].Rank
}

func (e *Engine) causeName(r *request) string {
	if r.task {
		return e.plan.Tasks[r.spell].Name
	}
	st := &e.plan.Stations[r.station]
	if r.cause < len(st.Stops) {
		return st.Stops[r.cause].Name
	}
	return st.Stocks[r.cause-len(st.Stops)].Name
}

// assign lets people begin.
func (e *Engine) assign(c *crew, r request) {
	e.clockCrew(c)
	c.idle -= r.people
	if r.elsewhere() {
		c.away++
		p := &e.timers.people[r.timer-e.timers.elsewhere]
		p.away = true
		e.cal.set(r.timer, e.now+exponential(c.plan.Spell, p.stream.Uniform()))
		return
	}
	c.atLine += r.people
	c.rec.Requests++
	if wait := e.now - r.at; wait > 0 {
		c.rec.Waited++
		c.rec.WaitTime += wait
	}
	if r.task {
		e.beginTask(r.spell)
		return
	}
	e.beginWork(r.spell)
}

// free gives people back after work at the line.
func (e *Engine) free(crew, people int) {
	c := &e.crews[crew]
	e.clockCrew(c)
	c.atLine -= people
	c.idle += people
	e.asked = true
}

// elsewhereDue ends a spell of other work, or asks for a person to do the next.
func (e *Engine) elsewhereDue(timer int) {
	p := &e.timers.people[timer-e.timers.elsewhere]
	c := &e.crews[p.crew]
	if !p.away {
		e.cal.set(timer, plan.Never)
		c.queue = append(c.queue, request{
			priority: usualPriority, at: e.now, station: none, people: 1, timer: timer,
		})
		e.asked = true
		return
	}
	e.clockCrew(c)
	p.away = false
	c.away--
	c.idle++
	e.asked = true
	e.cal.set(timer, e.now+exponential(c.plan.Gap(), p.stream.Uniform()))
}

// resetElsewhere starts the other work of everybody as it is at any time: with
// probability share a person is away. The one number is used twice.
func (e *Engine) resetElsewhere(seed uint64, replication int) {
	for j := range e.timers.people {
		p := &e.timers.people[j]
		c := &e.crews[p.crew]
		p.stream = draw.NewStream(seed, replication, c.plan.Name, "busy elsewhere", strconv.Itoa(p.person))
		u, share := p.stream.Uniform(), c.plan.Share
		p.away = u < share
		if p.away {
			c.idle--
			c.away++
			e.cal.set(e.timers.elsewhere+j, exponential(c.plan.Spell, u/share))
		} else {
			e.cal.set(e.timers.elsewhere+j, exponential(c.plan.Gap(), (u-share)/(1-share)))
		}
	}
}

// clockCrew adds the time of people at work up to now to the record.
func (e *Engine) clockCrew(c *crew) {
	dt := e.now - c.mark
	c.rec.Busy += dt * plan.Micros(c.atLine)
	c.rec.Elsewhere += dt * plan.Micros(c.away)
	c.mark = e.now
}

// exponential is a time of this mean for a uniform number u, by inversion.
func exponential(mean plan.Micros, u float64) plan.Micros {
	return max(1, plan.Micros(math.Round(-float64(mean)*math.Log1p(-u))))
}
