package plain

import (
	"slices"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// ways are the streams of the times until somebody sets out to a stop or task, and gets there.
type ways struct{ response, walk draw.Stream }

// wayTo is the way of people to their work: from the request on, if they were free then.
type wayTo struct {
	request
	from plan.Micros // when they were found
	crew int         // that was asked
	// streams are where its parts are drawn from, before is what they were before.
	streams *ways
	before  ways
	lasts   plan.Micros
}

// drawWay draws the way of people of a crew: whoever takes longest is waited for. All crews share the random number.
func (e *Engine) drawWay(c *crew, w *wayTo) {
	if !e.ways {
		return
	}
	if w.streams == nil {
		w.streams = e.waysOf(&w.request)
		w.before = *w.streams
	}
	lasts := drawAgain(&c.plan.Walk, &w.before.walk, &w.streams.walk)
	if w.from == w.at { // else he comes from other work, or from a break
		lasts += drawAgain(&c.plan.Response, &w.before.response, &w.streams.response)
	}
	w.lasts = max(w.lasts, lasts)
}

func drawAgain(law *draw.Law, before, after *draw.Stream) plan.Micros {
	if law.IsZero() {
		return 0
	}
	s := *before
	lasts := plan.Micros(draw.Micros(law, &s))
	if !law.IsFixed() {
		*after = s
	}
	return lasts
}

func (e *Engine) waysOf(r *request) *ways {
	switch {
	case !r.task:
		return &e.stations[r.station].ways[r.cause]
	case e.plan.Tasks[r.spell].Kind == plan.RefillTask: // like the change, which is done by the same people
		s := &e.stations[r.station]
		return &s.ways[len(s.plan.Stops)+e.plan.Tasks[r.spell].Item]
	}
	return &e.tasks[r.spell].ways
}

// setOut lets people go their way, at the end of which the work begins.
func (e *Engine) setOut(w *wayTo) {
	e.walks = append(e.walks, *w)
	e.walk(w, true)
	timer := e.timers.tasks + w.spell
	if !w.task {
		if timer = e.calendarTimer(w.spell); timer == none {
			timer = e.spells[w.spell].station
		}
	}
	e.cal.set(timer, e.now+w.lasts)
}

// walk says that the people of a job are on the way to it, or no more.
func (e *Engine) walk(w *wayTo, on bool) {
	job := jobOf(w.task, w.spell)
	e.walkOf(&e.crews[w.crew], job, on)
	for _, k := range e.crews[w.crew].plan.Helpers {
		e.walkOf(&e.crews[k], job, on)
	}
}

func (e *Engine) walkOf(c *crew, job int, on bool) {
	e.clockCrew(c)
	for i := range c.people {
		if p := &c.people[i]; p.where == atLine && p.job == job {
			p.walking = on
		}
	}
	for i := range c.leavers {
		if l := &c.leavers[i]; l.job == job {
			l.walking = on
		}
	}
	c.count()
}

// arrives lets the work of a job begin if its people have been on the way; it says whether they were.
func (e *Engine) arrives(job int) bool {
	i := slices.IndexFunc(e.walks, func(w wayTo) bool { return jobOf(w.task, w.spell) == job })
	if i < 0 {
		return false
	}
	w := e.walks[i]
	e.walks = slices.Delete(e.walks, i, i+1)
	e.walk(&w, false)
	e.workBegins(&w)
	return true
}

// stopDue ends a stop, or the way to its work.
func (e *Engine) stopDue(id int) {
	if len(e.walks) == 0 || !e.arrives(jobOf(false, id)) {
		e.close(id)
	}
}

// workBegins counts a request, and begins the work.
func (e *Engine) workBegins(w *wayTo) {
	c := &e.crews[w.crew]
	wait := e.now - w.at - (e.offShift() - w.off)
	c.rec.Requests++
	c.rec.WaitTime += wait
	if w.from > w.at {
		c.rec.Waited++
	}
	if c.rec.Waits != nil {
		c.rec.Waits.Add(wait, 1)
		if asks := e.asksFor(&w.request); asks != none {
			e.rec.Stations[asks].Waits.Add(wait, 1)
		}
	}
	if w.task {
		e.beginTask(w.spell)
		return
	}
	e.beginWork(w.spell)
}

// asksFor is the station as written that asks, or none for a place between stations.
func (e *Engine) asksFor(r *request) int {
	switch {
	case !r.task:
		return e.plan.Stations[r.station].Causes[r.cause].Declared
	case r.station == none:
		return none
	}
	return e.plan.Tasks[r.spell].Cause.Declared
}

// resetWays begins the streams anew.
func (e *Engine) resetWays(o Options) {
	e.walks = e.walks[:0]
	if !e.ways {
		return
	}
	begin := func(w *ways, name, purpose, of string) {
		w.response = draw.NewStream(o.Seed, o.Replication, name, purpose+"response", of)
		w.walk = draw.NewStream(o.Seed, o.Replication, name, purpose+"walk", of)
	}
	for i := range e.stations {
		s := &e.stations[i]
		if s.ways == nil {
			s.ways = make([]ways, len(s.plan.Causes))
		}
		for j := range s.plan.Stops {
			begin(&s.ways[j], s.plan.Stops[j].Streams, "", s.plan.Stops[j].Name)
		}
		for j := range s.plan.Stocks {
			begin(&s.ways[len(s.plan.Stops)+j], s.plan.Stocks[j].Streams, "", s.plan.Stocks[j].Name)
		}
	}
	for id := range e.tasks {
		t := e.tasks[id].plan
		purpose := ""
		switch t.Kind {
		case plan.PrepareTask: // which has the name of the change
			purpose = "prepare "
		case plan.SetUpTask: // which may have the name of a stop
			purpose = t.Purpose + " "
		}
		begin(&e.tasks[id].ways, t.Streams, purpose, t.Name)
	}
}
