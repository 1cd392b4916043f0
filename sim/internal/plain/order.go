package plain

import "tuckline/sim/internal/plan"

// making is where the lines stand with their orders.
type making struct {
	plan  *plan.Orders
	lines []orderLine
	// taken is how many orders the lines have taken so far, unfinished how many of them are not finished.
	taken, unfinished int
	// watches says that a line is running out, or wants the next order: it is looked at in every instant.
	watches bool
	// cuts says that the run ends with the last order.
	cuts bool
}

// orderPhase is what a line does about its orders.
type orderPhase uint8

const (
	free     orderPhase = iota // it wants the next order
	changing                   // a changeover, from the request to its end
	makes                      // an order, from its first cycle until nothing moves any more
	emptying                   // what is left is taken out
	over                       // there is no further order
)

// orderLine is one line.
type orderLine struct {
	plan  *plan.OrderLine
	phase orderPhase
	// record is the place of its order in Record.Orders, none before the first.
	record int
	// since is when the phase began.
	since plan.Micros
	// left is what the heads may still take: units of the batch, or parts of good pieces. Dry says that this is not
	// enough for a cycle.
	left int64
	dry  bool
	// asked is who kept the line from being empty when it was looked at last: he is asked first.
	asked int
}

// connectOrders tells the stations and places of their lines.
func (e *Engine) connectOrders() {
	p := e.plan.Orders
	if p == nil {
		return
	}
	e.making.plan, e.making.lines = p, make([]orderLine, len(p.Lines))
	for i := range p.Lines {
		l := &e.making.lines[i]
		l.plan = &p.Lines[i]
		for _, s := range l.plan.Stations {
			e.stations[s].order = l
		}
		for j := range l.plan.Heads {
			e.stations[l.plan.Heads[j].Station].head = &l.plan.Heads[j]
		}
		for j := range l.plan.Flow {
			e.stations[l.plan.Flow[j].Station].flow = &l.plan.Flow[j]
		}
		for _, s := range l.plan.Answers {
			e.stations[s].answers = true
		}
		for _, k := range l.plan.Links {
			e.links[k].order = l
		}
		for _, k := range l.plan.Fed {
			e.links[k].fed = true
		}
	}
}

// resetOrders lets every line begin with an order.
func (e *Engine) resetOrders(o Options) {
	m := &e.making
	m.taken, m.unfinished, m.watches, m.cuts = 0, 0, false, o.UntilOrders
	for i := range m.lines {
		l := &m.lines[i]
		*l = orderLine{plan: l.plan, record: none}
		e.stopSupply(l)
	}
	e.giveOrders()
}

// order is what a line makes.
func (e *Engine) order(l *orderLine) *plan.Order {
	return &e.making.plan.List[e.rec.Orders[l.record].Order]
}

// giveOrders gives the lines that are free their next orders, by the name of their first station.
func (e *Engine) giveOrders() (any bool) {
	m := &e.making
	for i := range m.lines {
		l := &m.lines[i]
		if l.phase != free {
			continue
		}
		any = true
		if m.taken == len(m.plan.List) && !m.plan.Again {
			l.phase, l.since = over, e.now
			continue
		}
		e.nextOrder(l)
	}
	return any
}

// nextOrder begins an order, or the changeover before it.
func (e *Engine) nextOrder(l *orderLine) {
	m := &e.making
	n := len(m.plan.List)
	before := l.record
	l.record = len(e.rec.Orders)
	e.rec.Orders = append(e.rec.Orders, plan.OrderRecord{
		Order: m.taken % n, Round: m.taken / n, Line: l.plan.First, Changed: e.now, Began: plan.Never, Finished: plan.Never,
	})
	m.taken++
	m.unfinished++
	setUp := e.order(l).SetUp
	if before == none || setUp == plan.None {
		e.beginOrder(l)
		return
	}
	l.phase, l.since = changing, e.now
	for _, i := range l.plan.Stations {
		s := &e.stations[i]
		s.open++ // like a break
		e.touched.add(i)
		e.wake(s.node)
	}
	e.ask(l.plan.SetUps[setUp])
}

// changedOver ends a changeover.
func (e *Engine) changedOver(l *orderLine) {
	for _, i := range l.plan.Stations {
		s := &e.stations[i]
		s.open--
		e.touched.add(i)
		e.wake(s.node)
	}
	e.beginOrder(l)
}

// beginOrder lets the input of an order in: the line is as empty as a new one.
func (e *Engine) beginOrder(l *orderLine) {
	l.phase, l.since = makes, e.now
	e.rec.Orders[l.record].Began = e.now
	for _, i := range l.plan.Stations {
		s := &e.stations[i]
		s.lastPart, s.short = 0, 0
		if s.start != nil {
			s.startable, s.lacked = false, fromNew
		}
	}
	for _, k := range l.plan.Links {
		if st := e.links[k].store; st != nil {
			st.keeps = st.plan.Keeps
		}
	}
	for _, i := range l.plan.Sides {
		s := &e.stations[i]
		s.supply = -1
		e.wake(s.node)
	}
	o := e.order(l)
	l.left = o.Batch + o.Good*l.plan.Worth // one of them is 0
	e.allot(l)
}

// stopSupply lets nothing more into a line.
func (e *Engine) stopSupply(l *orderLine) {
	for i := range l.plan.Heads {
		e.stations[l.plan.Heads[i].Station].supply = 0
	}
	for _, i := range l.plan.Sides {
		e.stations[i].supply = 0
	}
}

// finished notes the end of the order of a line, and of the run if it was the last.
func (e *Engine) finished(l *orderLine) {
	m := &e.making
	e.rec.Orders[l.record].Finished = e.now
	m.unfinished--
	if !m.cuts || m.plan.Again || m.unfinished > 0 || m.taken < len(m.plan.List) {
		return
	}
	// The window closes behind what happens in this instant: the last piece has its place in it.
	e.rec.End, e.rec.EndedAt = plan.OrdersFinished, e.now
	e.t1 = max(e.now, e.t0)
	e.edge, e.rec.Window = e.t1, e.t1-e.t0
}

// noSupply is why a station at the beginning gets nothing.
func (e *Engine) noSupply(s *station) int {
	if s.order != nil && s.order.phase != over {
		return plan.CauseOrder
	}
	return plan.CauseSupply
}
