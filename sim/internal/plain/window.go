package plain

import "tuckline/sim/internal/plan"

// reset makes everything new and empty for one replication.
func (e *Engine) reset(o Options) *plan.Record {
	e.now, e.t0, e.t1 = 0, o.WarmUp, o.WarmUp+o.Measure
	e.edge, e.every, e.ended, e.trace = e.t0, o.Every, false, o.Trace
	e.atWork, e.running, e.allMark, e.asked = 0, 0, 0, true
	e.fresh, e.begins, e.pockets, e.closed = e.fresh[:0], e.begins[:0], e.pockets[:0], e.closed[:0]
	e.rec = newRecord(e.plan, o)
	e.cal.reset(e.timers.count)
	for i := range e.spells {
		e.spells[i].open = false
	}
	for i := range e.groups {
		e.groups[i].open = e.groups[i].open[:0]
	}
	e.resetStations(o)
	e.resetLinks(o.Classes)
	e.resetStores(o)
	e.resetHours()
	e.noteWaits = o.Waits
	e.resetTasks(o)
	e.resetCrews(o)
	e.resetChecks()
	e.resetBecause(o.Attribute, o.Pauses, o.ShortUpTo)
	e.resetAges(o.AgesAt)
	e.follows = e.because != nil || e.ages != nil || e.plan.Orders != nil
	e.resetOrders(o)
	e.closely, e.told = e.because != nil || len(e.stores) > 0 || len(e.held) > 0, e.because != nil || e.trace != nil
	for k := range e.plan.Nodes {
		e.busy[k], e.nodes[k].turn = false, 0
		e.dirty.add(k)
	}
	return e.rec
}

func (e *Engine) resetStations(o Options) {
	for i := range e.stations {
		s := &e.stations[i]
		p := s.plan
		s.rec = &e.units[i]
		*s.rec = plan.StationRecord{}
		if len(p.Members) == 1 {
			s.rec = &e.rec.Stations[p.Members[0].Declared]
		}
		s.machine.Reset(p, o.Seed, o.Replication)
		s.phase, s.supply, s.out, s.reserved = idle, p.Supply, 0, 0
		s.rested, s.since, s.released, s.own, s.open = fromNew, plan.Never, 0, none, 0
		s.lacked, s.startable, s.waited = fromNew, false, false
		s.pocket, s.inARow = false, 0
		s.lastPart, s.short = 0, 0
		s.resetDelays()
		s.state, s.by, s.stop, s.entered, s.mark, s.heldFrom, s.emptied = unset, none, none, 0, 0, 0, longAgo
	}
	for j := range e.timers.stops {
		stop := &e.timers.stops[j]
		stop.spell = none
		e.cal.set(e.timers.calendar+j, e.stations[stop.station].machine.CalendarAge(stop.cause))
	}
}

func (e *Engine) resetLinks(classes bool) {
	for i := range e.links {
		l := &e.links[i]
		p := l.plan
		l.rec = &e.rec.Buffers[i]
		l.level, l.arrived, l.reserved = p.AtStart, p.AtStart, 0
		l.since, l.mark, l.turn = plan.Never, 0, 0
		l.moving.clear()
		if classes && p.Capacity <= classesUpTo {
			l.rec.Classes = make([]plan.Micros, plan.LevelClasses)
			l.classify()
		}
	}
}

// classesUpTo is the largest capacity for which classes of level are kept.
const classesUpTo = 1 << 20

// classify makes the table from level to class: 0, then 50 equal parts of the capacity.
func (l *link) classify() {
	if l.class != nil {
		return
	}
	l.class = make([]uint8, l.plan.Capacity+1)
	for level := int64(1); level <= l.plan.Capacity; level++ {
		l.class[level] = uint8((level*(plan.LevelClasses-1) + l.plan.Capacity - 1) / l.plan.Capacity)
	}
}

func newRecord(p *plan.Plan, o Options) *plan.Record {
	stations := 0
	for i := range p.Stations {
		stations += len(p.Stations[i].Members)
	}
	rec := &plan.Record{
		Replication: o.Replication, Window: o.Measure,
		Stations: make([]plan.StationRecord, stations),
		Buffers:  make([]plan.BufferRecord, len(p.Links)),
		Crews:    make([]plan.CrewRecord, len(p.Crews)),
	}
	causes := make([]int, stations)
	for i := range p.Stations {
		for _, c := range p.Stations[i].Causes {
			causes[c.Declared]++
		}
	}
	for i := range rec.Stations {
		rec.Stations[i].Stops = make([]plan.StopRecord, causes[i])
	}
	for i := range p.Stations {
		recordsOf(&p.Stations[i], rec)
	}
	for i := range p.Links {
		if s := p.Links[i].Store; s != nil && len(s.Stops) > 0 {
			rec.Buffers[i].Stops = make([]plan.StopRecord, len(s.Stops))
		}
	}
	return rec
}

// recordsOf makes the records of the materials and checks of a station, at the members whose they are.
func recordsOf(p *plan.Station, rec *plan.Record) {
	for i := range p.Stocks {
		r := &rec.Stations[p.Stocks[i].Declared]
		r.Materials = append(r.Materials, plan.MaterialRecord{})
	}
	for i := range p.Checks {
		r := &rec.Stations[p.Members[p.Checks[i].Member].Declared]
		r.Checks = append(r.Checks, plan.CheckRecord{})
	}
}

// cross passes the next edge of the window: everything that lasts is cut there.
func (e *Engine) cross() {
	e.now = e.edge
	switch {
	case e.edge == e.t0:
		e.flush()
		e.clearCounts()
		e.atEdge(0)
	case e.every > 0 && (e.edge-e.t0)%e.every == 0:
		e.sample()
	}
	switch e.edge {
	case e.t0:
		e.findShift()
	case e.hours.border:
		e.crossBorder()
	}
	if e.edge < e.t1 {
		e.edge = e.nextEdge()
		return
	}
	e.noteShift()
	e.flush()
	e.atEdge(1)
	e.finish()
}

// nextEdge is the end of the interval under way, of the shift, or of the window.
func (e *Engine) nextEdge() plan.Micros {
	next := min(e.t1, e.hours.border)
	if e.every > 0 {
		return min(e.t0+((e.edge-e.t0)/e.every+1)*e.every, next)
	}
	return next
}

// sample notes what each station has passed in the interval that ends.
func (e *Engine) sample() {
	passed := e.passed()
	for _, before := range e.rec.Series {
		for i := range passed {
			passed[i] -= before[i]
		}
	}
	e.rec.Series = append(e.rec.Series, passed)
}

// flush counts all that lasts up to now.
func (e *Engine) flush() {
	for i := range e.stations {
		s := &e.stations[i]
		if s.state != unset {
			s.rec.States[s.state] += e.now - s.mark
		}
		s.mark = e.now
		if s.phase == holding {
			s.rec.Holding += e.now - s.heldFrom
			s.heldFrom = e.now
		}
	}
	e.flushRunning()
	if e.because != nil {
		e.because.countAll(e)
	}
	for i := range e.links {
		e.clock(&e.links[i])
	}
	e.flushStores()
	for id := range e.spells {
		if e.spells[id].open {
			e.count(id)
		}
	}
	for i := range e.crews {
		e.clockCrew(&e.crews[i])
	}
	e.clockHours()
}

// clearCounts begins the window: what was counted before does not belong to it.
func (e *Engine) clearCounts() {
	for i := range e.rec.Stations {
		stops := e.rec.Stations[i].Stops
		clear(stops)
		materials, checks := e.rec.Stations[i].Materials, e.rec.Stations[i].Checks
		clear(materials)
		clear(checks)
		e.rec.Stations[i] = plan.StationRecord{Stops: stops, Materials: materials, Checks: checks}
	}
	clear(e.units)
	e.rec.AllRunning = 0
	for i := range e.rec.Buffers {
		classes, stops := e.rec.Buffers[i].Classes, e.rec.Buffers[i].Stops
		clear(classes)
		clear(stops)
		e.rec.Buffers[i] = plan.BufferRecord{Classes: classes, Stops: stops}
	}
	clear(e.rec.Crews)
	if e.noteWaits {
		e.makeWaits()
	}
	e.rec.Scheduled, e.rec.Shifts = 0, nil
	if e.because != nil {
		e.because.clearCounts(e)
	}
	if e.ages != nil {
		e.rec.Ages = &plan.Ages{}
	}
}

// atEdge notes what is inside at the first edge (0) or at the last (1).
func (e *Engine) atEdge(edge int) {
	for i := range e.stations {
		s := &e.stations[i]
		s.rec.InputInside[edge], s.rec.PartInside[edge], s.rec.OutputInside[edge] = 0, 0, s.out
		if s.phase == working && !s.pocket || s.phase == loaded {
			s.rec.InputInside[edge], s.rec.PartInside[edge] = s.plan.Takes-s.short, s.short
		}
		e.materialsAtEdge(s, edge)
	}
	for i := range e.links {
		e.links[i].rec.Level[edge] = e.links[i].level
	}
}

// full says that the whole output of the first feeder does not fit; what it has
// reserved for itself is room for it.
func (l *link) full() bool {
	return l.first == nil || l.plan.Gives > l.free()+l.first.reserved
}

// clock counts the level of a link up to now; it is called before every change.
func (e *Engine) clock(l *link) {
	dt := e.now - l.mark
	if dt == 0 {
		return
	}
	if l.delays != nil {
		e.ageDelays(l)
	}
	rec := l.rec
	rec.AddLevel(l.level, dt)
	if l.plan.Transit > 0 {
		rec.TransitTime += (l.level - l.arrived) * int64(dt)
	}
	if l.plan.Gives > l.free() && l.full() {
		rec.Full += dt
	}
	if l.arrived < l.plan.Takes {
		rec.Empty += dt
	}
	rec.Max = max(rec.Max, l.level)
	if rec.Classes != nil {
		rec.Classes[l.class[l.level]] += dt
	}
	if e.trace != nil {
		e.traceLevel(l)
	}
	l.mark = e.now
}
