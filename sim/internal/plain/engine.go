package plain

import "tuckline/sim/internal/plan"

// Engine runs replications of one plan, one after the other. It keeps its
// memory between runs.
type Engine struct {
	plan     *plan.Plan
	stations []station
	links    []link
	crews    []crew
	groups   []group
	spells   []spell
	cal      calendar
	timers   timers

	now plan.Micros
	// edge is the next edge of the window.
	edge, t0, t1 plan.Micros
	// dirty are the nodes that may move, touched the stations whose state may have changed.
	dirty, touched set
	// fresh are stations that a stop strikes before any work; begins are calendar stops that begin now.
	fresh  []int
	begins []int
	// atWork is the number of stations in a cycle.
	atWork  int
	asked   bool // a crew has something to decide
	watched bool // a level that somebody watches has fallen

	rec   *plan.Record
	trace *plan.Trace
	ended bool
}

// timers says which timer belongs to whom: stations first, then links with
// transit, calendar stops, other work of people.
type timers struct {
	transit, calendar, elsewhere, count int
	links                               []int // link of a transit timer
	transitOf                           []int // transit timer of a link, or None
	stops                               []calendarStop
	people                              []elsewhere
}

// New makes an engine.
func New(p *plan.Plan) *Engine {
	e := &Engine{
		plan:     p,
		stations: make([]station, len(p.Stations)),
		links:    make([]link, len(p.Links)),
		crews:    make([]crew, len(p.Crews)),
		groups:   make([]group, len(p.Groups)),
		dirty:    newSet(len(p.Nodes)),
		touched:  newSet(len(p.Stations)),
	}
	e.assignTimers()
	return e
}

func (e *Engine) assignTimers() {
	t := &e.timers
	t.transit = len(e.plan.Stations)
	t.transitOf = make([]int, len(e.plan.Links))
	for i := range e.plan.Links {
		t.transitOf[i] = plan.None
		if e.plan.Links[i].Transit > 0 {
			t.transitOf[i] = t.transit + len(t.links)
			t.links = append(t.links, i)
		}
	}
	t.calendar = t.transit + len(t.links)
	for i := range e.plan.Stations {
		for j := range e.plan.Stations[i].Stops {
			if e.plan.Stations[i].Stops[j].Clock == plan.CalendarClock {
				t.stops = append(t.stops, calendarStop{station: i, cause: j})
			}
		}
	}
	t.elsewhere = t.calendar + len(t.stops)
	for i := range e.plan.Crews {
		if c := &e.plan.Crews[i]; c.Share > 0 {
			for person := range c.People {
				t.people = append(t.people, elsewhere{crew: i, person: person})
			}
		}
	}
	t.count = t.elsewhere + len(t.people)
}

// Options are what a replication depends on beside the plan.
type Options struct {
	Seed        uint64
	Replication int
	WarmUp      plan.Micros
	Measure     plan.Micros
	Trace       *plan.Trace
	Classes     bool
}

// Run runs one replication.
func (e *Engine) Run(o Options) plan.Record {
	rec := e.reset(o)
	if e.t0 == 0 {
		e.cross()
	}
	if !e.ended {
		e.instant()
	}
	for !e.ended {
		t := e.cal.first()
		for t >= e.edge && !e.ended {
			e.cross()
		}
		if e.ended {
			break
		}
		e.now = t
		rec.Events++
		e.ends()
		e.instant()
	}
	return *rec
}

// instant does what follows the ends of an instant.
func (e *Engine) instant() {
	for _, timer := range e.begins {
		e.calendarBegins(timer)
	}
	e.begins = e.begins[:0]
	e.moves()
	if len(e.fresh) > 0 {
		e.strikeFresh()
	}
	if e.asked {
		e.giveOut()
	}
	e.settleStates()
	if e.atWork == 0 {
		e.lookForEnd()
	}
}

// ends does all that is due now, first among itself: see the package comment.
func (e *Engine) ends() {
	t := &e.timers
	for i := e.cal.due(0, e.now); i >= 0; i = e.cal.due(i+1, e.now) {
		switch {
		case i < t.transit:
			e.stationDue(i)
		case i < t.calendar:
			e.arrive(t.links[i-t.transit])
		case i < t.elsewhere:
			e.calendarDue(i)
		default:
			e.elsewhereDue(i)
		}
	}
}

// stationDue ends a cycle or a stop, or strikes a cycle under way.
func (e *Engine) stationDue(i int) {
	s := &e.stations[i]
	if s.own >= 0 {
		e.close(s.own)
		return
	}
	if cause := s.machine.Strike(); cause >= 0 {
		e.cal.set(i, plan.Never)
		s.rested = e.now
		e.open(i, cause)
		return
	}
	e.endCycle(i)
}

// endCycle settles the fate of the pieces of a cycle.
func (e *Engine) endCycle(i int) {
	s := &e.stations[i]
	fate := s.machine.End()
	s.rested = e.now
	s.phase = idle
	e.atWork--
	e.cal.set(i, plan.Never)
	rec := s.rec
	rec.Cycles++
	if fate.Scrapped {
		rec.ScrappedCycles++
		rec.Scrapped += s.plan.Gives
	} else {
		rec.Given += s.plan.Gives
		rec.Rejected += fate.Rejected
	}
	if fate.Good == 0 && s.reserved > 0 {
		e.unreserve(i)
	}
	if fate.Good > 0 {
		s.phase, s.out = holding, fate.Good
		s.heldFrom, s.since, s.released = e.now, e.now, false
	}
	e.dirty.add(s.plan.Node)
	e.touched.add(i)
}

// unreserve gives up the places that were reserved for the cycle.
func (e *Engine) unreserve(i int) {
	s := &e.stations[i]
	out := e.plan.Nodes[s.plan.Node].Out
	e.clock(out)
	e.links[out].reserved -= s.reserved
	s.reserved = 0
	e.roomIn(out)
}
