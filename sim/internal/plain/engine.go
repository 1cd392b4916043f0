package plain

import (
	"slices"

	"tuckline/sim/internal/plan"
)

// Engine runs replications of one plan, one after the other. It keeps its
// memory between runs.
type Engine struct {
	plan     *plan.Plan
	stations []station
	links    []link
	nodes    []node
	crews    []crew
	groups   []group
	spells   []spell
	tasks    []task
	cal      calendar
	making   making
	timers   timers
	hours    hours
	// walks are those who are on the way to their work; ways says that any crew has one, helps that people
	// of one crew may do the work of another, noteWaits that the distributions of waiting are asked for.
	walks                  []wayTo
	ways, helps, noteWaits bool

	now plan.Micros
	// edge is the next edge, of the window or of an interval of the series.
	edge, t0, t1, every plan.Micros
	// dirty are the nodes that may move, touched the stations whose state may have changed.
	dirty, touched set
	// busy are nodes in a cycle: nothing around them moves them.
	busy []bool
	// stuck is the set that wait for each other, while it is looked for.
	stuck set
	// fresh are stations that a stop strikes before any work; begins are calendar stops that begin now.
	fresh []int
	// pockets are stations that may run on with an empty pocket.
	pockets []int
	begins  []int
	// closed are stations of which a stop has ended in this instant.
	closed []int
	// stores are the links that are more than a place, the last of the line first; noted says that some are to
	// be looked at after the moves. jams are those that a stop strikes; shutStores is the number of those that are
	// stopped.
	stores, jams []*link
	hands        []*link // of the stores, the hand magazines
	noted        bool
	carries      bool // somebody has begun to carry
	shutStores   int
	// atWork is the number of stations in a cycle, running that of those that run; allMark is up to
	// where the time in which all run is counted.
	atWork, running int
	allMark         plan.Micros
	asked           bool       // a crew has something to decide
	levels          bool       // levels hold stations, or are given up when supply comes to its end
	follows         bool       // causes or ages are followed
	told            bool       // changes of state are traced or followed
	closely         bool       // there are stores or levels, or causes are followed
	held            []*station // those that start or restart levels hold
	// ends says that supply may come to its end and that there are start levels, which then lapse.
	ends bool

	rec *plan.Record
	// units are the records of stations of several members, until they are told apart.
	units []plan.StationRecord
	trace *plan.Trace
	ended bool
	// openTasks is the number of tasks that are open.
	openTasks int
	// because says what began waits, nil unless asked for; attribution keeps it between runs.
	because, attribution *because
	// ages follows when pieces were born, nil unless asked for; following keeps it between runs.
	ages, following *ages
}

// timers says which timer belongs to whom: stations first, then links with
// transit, what stores wait for, calendar stops, tasks, checks of the calendar, other work of people, the
// calendar of working time, late breaks of people.
type timers struct {
	transit, store, calendar, tasks, check, elsewhere, span, rest, count int

	links     []int // link of a transit timer
	transitOf []int // transit timer of a link, or None
	stores    []timedStore
	stops     []calendarStop
	checks    []calendarCheck
	people    []elsewhere
	rests     []restTimer
}

// New makes an engine.
func New(p *plan.Plan) *Engine {
	e := &Engine{
		plan:     p,
		stations: make([]station, len(p.Stations)),
		links:    make([]link, len(p.Links)),
		nodes:    make([]node, len(p.Nodes)),
		crews:    make([]crew, len(p.Crews)),
		tasks:    make([]task, len(p.Tasks)),
		groups:   make([]group, len(p.Groups)),
		dirty:    newSet(len(p.Nodes)),
		touched:  newSet(len(p.Stations)),
		busy:     make([]bool, len(p.Nodes)),
		stuck:    newSet(len(p.Nodes)),
		units:    make([]plan.StationRecord, len(p.Stations)),
	}
	e.assignTimers()
	e.connect()
	e.connectCrews()
	e.ends = (p.Orders != nil || slices.ContainsFunc(p.Stations, func(s plan.Station) bool { return s.Supply >= 0 })) &&
		(slices.ContainsFunc(p.Stations, func(s plan.Station) bool { return s.StartLink != plan.None }) ||
			slices.ContainsFunc(e.stores, func(l *link) bool { return l.store.plan.Keeps > 0 }))
	e.connectLevels()
	e.connectOrders()
	return e
}

// connect links stations, links and nodes to each other.
func (e *Engine) connect() {
	for i := range e.links {
		e.links[i].plan, e.links[i].index = &e.plan.Links[i], i
		e.links[i].timer = e.timers.transitOf[i]
		e.links[i].special = e.links[i].isSpecial()
	}
	for k := range e.plan.Nodes {
		p, n := &e.plan.Nodes[k], &e.nodes[k]
		n.index = k
		for o := range p.Outs {
			n.outs = append(n.outs, out{link: &e.links[p.Outs[o].Link], plan: &p.Outs[o]})
		}
		if p.Station == plan.None {
			n.link = &e.links[p.Link]
			continue
		}
		e.connectStation(&e.stations[p.Station], p.Station, n)
		e.stations[p.Station].connectDelays()
	}
}

func (e *Engine) connectStation(s *station, i int, n *node) {
	n.station = s
	s.plan, s.index, s.node = &e.plan.Stations[i], i, n.index
	for j, in := range s.plan.Ins {
		if l := &e.links[in.Link]; j == 0 {
			s.in = l
		} else {
			s.also = append(s.also, input{link: l, takes: in.Takes})
		}
	}
	if s.plan.StartLink != plan.None {
		s.start = &e.links[s.plan.StartLink]
	}
	s.simple = s.in != nil && s.in.store == nil && len(s.also) == 0 && s.start == nil && len(s.in.plan.Takers) == 1
	for _, out := range n.outs {
		if out.link.plan.Feeders[0] == n.index {
			out.link.first = s
		}
	}
	if len(n.outs) == 1 {
		out := &n.outs[0]
		s.next = out.link
		s.alone = len(s.next.plan.Feeders) == 1 && len(out.plan.Stops) == 0 && len(out.plan.Restarts) == 0 &&
			len(out.plan.Sensors) == 0 && s.next.store == nil
	}
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
	t.store = t.transit + len(t.links)
	e.connectStores()
	t.calendar = t.store + len(t.stores)
	for i := range e.plan.Stations {
		for j := range e.plan.Stations[i].Stops {
			if e.plan.Stations[i].Stops[j].Clock == plan.CalendarClock {
				t.stops = append(t.stops, calendarStop{station: i, cause: j})
			}
		}
		for j := range e.plan.Stations[i].Checks {
			if e.plan.Stations[i].Checks[j].Clock == plan.CalendarClock {
				t.checks = append(t.checks, calendarCheck{station: i, check: j})
			}
		}
	}
	t.tasks = t.calendar + len(t.stops)
	t.check = t.tasks + len(e.plan.Tasks)
	t.elsewhere = t.check + len(t.checks)
	for i := range e.plan.Crews {
		if c := &e.plan.Crews[i]; c.Share > 0 {
			for person := range c.People {
				t.people = append(t.people, elsewhere{crew: i, person: person})
			}
		}
	}
	t.span = t.elsewhere + len(t.people)
	t.rest = t.span + min(1, len(e.plan.Calendar))
	for i := range e.plan.Crews {
		c := &e.plan.Crews[i]
		if !slices.ContainsFunc(c.Duties, func(d plan.Duty) bool { return d.Break > 0 }) {
			continue
		}
		for person := range c.People {
			t.rests = append(t.rests, restTimer{crew: i, person: person})
		}
	}
	t.count = t.rest + len(t.rests)
}

// Options are what a replication depends on beside the plan.
type Options struct {
	Seed        uint64
	Replication int
	WarmUp      plan.Micros
	Measure     plan.Micros
	Trace       *plan.Trace
	Classes     bool
	Attribute   bool
	Pauses      bool // only with Attribute
	ShortUpTo   []plan.Micros
	AgesAt      []int
	Waits       bool
	UntilOrders bool
	Every       plan.Micros
}

// Run runs one replication.
func (e *Engine) Run(o Options) plan.Record {
	rec := e.reset(o)
	if e.t0 == 0 {
		e.cross()
	}
	if !e.ended {
		e.firstTasks()
		e.instant()
	}
	for !e.ended {
		t, timer, more := e.cal.first()
		for t >= e.edge && !e.ended {
			e.cross()
		}
		if e.ended {
			break
		}
		e.now = t
		e.end(timer)
		for more {
			if timer = e.cal.due(timer+1, t); timer < 0 {
				break
			}
			e.end(timer)
		}
		e.instant()
	}
	return *rec
}
