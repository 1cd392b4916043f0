package plain

import "tuckline/sim/internal/plan"

// request asks for people: for a stop, for a task, or for other work outside the line.
type request struct {
	priority       int
	at             plan.Micros
	station, cause int // station is none for other work
	task           bool
	spell          int // or the task
	people         int
	timer          int // of other work
	// off is the time off shift up to then: nobody is waited for in it.
	off plan.Micros
}

// usualPriority is that of other work, in the middle from 1 to 9.
const usualPriority = 5

// request puts a request into the queue of its crew.
func (e *Engine) request(work *plan.Work, r request) {
	c := &e.crews[work.Crew]
	r.off = e.offShift()
	c.queue = append(c.queue, r)
	e.asked = true
}

// giveOut gives people to requests in order: priority, time, name of station and
// of stop or task. The first of a crew waits until it has all it asks for; nobody of its crew goes ahead of it.
func (e *Engine) giveOut() {
	e.asked = false
	if e.helps {
		e.giveOutAmongAll()
		return
	}
	for i := range e.crews {
		c := &e.crews[i]
		for len(c.queue) > 0 {
			first := e.firstRequest(c)
			if c.queue[first].people > c.idle {
				break
			}
			e.assign(c, c.unqueue(first))
		}
	}
}

// giveOutAmongAll does the same where people of one crew may do the work of another: in one order for all.
func (e *Engine) giveOutAmongAll() {
	for i := range e.crews {
		e.crews[i].waits = false
	}
	for {
		var c *crew
		first := none
		for i := range e.crews {
			o := &e.crews[i]
			if o.waits || len(o.queue) == 0 {
				continue
			}
			if j := e.firstRequest(o); c == nil || e.asksBefore(&o.queue[j], &c.queue[first]) {
				c, first = o, j
			}
		}
		switch {
		case c == nil:
			return
		case c.queue[first].people > e.atHand(c, &c.queue[first]):
			c.waits = true
		default:
			e.assign(c, c.unqueue(first))
		}
	}
}

// atHand is how many people may serve a request now: other work is done by its own crew only.
func (e *Engine) atHand(c *crew, r *request) int {
	n := c.idle
	if !r.elsewhere() {
		for _, k := range c.plan.Helpers {
			n += e.crews[k].idle
		}
	}
	return n
}

// unqueue takes a request out of the queue.
func (c *crew) unqueue(i int) request {
	r := c.queue[i]
	c.queue[i] = c.queue[len(c.queue)-1]
	c.queue = c.queue[:len(c.queue)-1]
	return r
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
