package part

import (
	"math"

	"tuckline/sim/internal/draw"
	"tuckline/sim/internal/plan"
)

// Machine is the inside of one station: it says how long each cycle lasts,
// where in it a stop strikes and what becomes of its pieces.
//
// The engine calls Start, then Strike and Resume for every stop on the way, then
// End. A cycle that is Quiet it may end itself: all its pieces are good.
type Machine struct {
	plan *plan.Station
	// quietCycles and quietWork are what is left of the quiet span, spanCycles
	// and spanWork what it was when the parts were last asked.
	quietCycles, spanCycles int64
	quietWork, spanWork     plan.Micros
	// fixed is the duration of a cycle where nothing changes it, else 0.
	fixed plan.Micros
	// watch is the shortest pause that a part wants to hear of.
	watch plan.Micros
	// careful says that the cycle under way is done step by step.
	careful bool
	// dur is the duration of the cycle under way, at how much of it had passed when work
	// last began.
	dur, at plan.Micros
	// base is the work that was left then, in time at set speed; ramp is where the ramp stood then.
	base, ramp float64

	pace    pace
	stops   []stop
	stocks  []stock
	rejects []reject
	scrap   scrap
	// doomed says that the cycle under way is scrap by time.
	doomed bool
	// point is where in the cycle the last stop struck.
	point point
}

// Reset makes the machine new for one replication.
func (m *Machine) Reset(pl *plan.Station, seed uint64, replication int) {
	stream := func(names ...string) draw.Stream { return draw.NewStream(seed, replication, names...) }
	m.plan, m.careful, m.at = pl, false, 0
	m.pace.reset(&pl.Pace, stream(pl.Streams, "cycle"))
	m.scrap.reset(pl)
	if m.stops == nil {
		m.stops, m.stocks = make([]stop, len(pl.Stops)), make([]stock, len(pl.Stocks))
		m.rejects = make([]reject, len(pl.Rejects))
	}
	for i := range m.rejects {
		m.rejects[i].reset(&pl.Rejects[i], stream(pl.Rejects[i].Streams, "rejects"))
	}
	for i := range m.stops {
		p := &pl.Stops[i]
		m.stops[i].reset(p, stream(p.Streams, "every", p.Name), stream(p.Streams, "lasts", p.Name))
	}
	for i := range m.stocks {
		p := &pl.Stocks[i]
		m.stocks[i].reset(p, stream(p.Streams, "change", p.Name), stream(p.Streams, "part used", p.Name))
	}
	m.fixed = 0
	if len(pl.Pace.Steps) == 0 {
		m.fixed = pl.Pace.Fixed
	}
	m.watch = m.scrap.watch()
	if pl.Pace.Ramp > 0 {
		m.watch = min(m.watch, pl.Pace.RampAfter)
	}
	m.ask()
}

// ask asks every part how long nothing of it happens.
func (m *Machine) ask() {
	cycles, work := m.pace.quiet(), plan.Never
	for i := range m.stops {
		c, w := m.stops[i].quiet()
		cycles, work = min(cycles, c), min(work, w)
	}
	for i := range m.stocks {
		cycles = min(cycles, m.stocks[i].quiet())
	}
	for i := range m.rejects {
		cycles = min(cycles, m.rejects[i].quiet())
	}
	if m.scrap.open() {
		cycles = 0
	}
	m.quietCycles, m.spanCycles = cycles, cycles
	m.quietWork, m.spanWork = work, work
}

// settle tells the parts what has passed since they were asked.
func (m *Machine) settle() {
	cycles, work := m.spanCycles-m.quietCycles, m.spanWork-m.quietWork
	m.passed(cycles, work)
	for i := range m.rejects {
		m.rejects[i].passed(cycles)
	}
	m.spanCycles, m.spanWork = m.quietCycles, m.quietWork
}

func (m *Machine) passed(cycles int64, work plan.Micros) {
	m.pace.passed(cycles)
	for i := range m.stops {
		m.stops[i].passed(cycles, work)
	}
	for i := range m.stocks {
		m.stocks[i].passed(cycles)
	}
}

// Start begins a cycle after a pause since the last work. Level is that of the
// buffer before the station, before the input is taken. It returns the work
// up to the first stop in the cycle, or to its end; 0 if a stop strikes before any work.
func (m *Machine) Start(level int64, pause plan.Micros) plan.Micros {
	if d := m.fixed; d != 0 && pause <= m.watch && m.quietCycles > 0 && d <= m.quietWork {
		return m.quiet(d)
	}
	return m.start(level, pause)
}

// quiet begins a cycle in which nothing happens.
func (m *Machine) quiet(d plan.Micros) plan.Micros {
	m.quietCycles--
	m.quietWork -= d
	m.at, m.dur = 0, d
	return d
}

func (m *Machine) start(level int64, pause plan.Micros) plan.Micros {
	if pause > m.watch {
		m.standstill(pause)
	}
	d := m.fixed
	if d == 0 {
		d = m.pace.base(level)
	}
	if m.quietCycles > 0 && d <= m.quietWork {
		return m.quiet(d)
	}
	m.settle()
	m.careful = true
	d = m.pace.long(d)
	m.at, m.base, m.ramp = 0, float64(d), m.pace.ramp
	m.dur = m.pace.onRamp(d)
	m.doomed, m.point = m.scrap.time > 0, point{}
	return m.next()
}

// standstill tells the parts of a pause at the start of work.
func (m *Machine) standstill(pause plan.Micros) {
	m.settle()
	m.scrap.pause(m.scrap.afterStandstill, pause)
	m.pace.standstill(pause)
	m.ask()
}

// next is the work from where the cycle stands to the next stop or to its end.
func (m *Machine) next() plan.Micros {
	_, at := m.first()
	return at - m.at
}

// first is the stop that strikes first in the rest of the cycle, by name if
// several are due together, and where; None and the end if there is none.
func (m *Machine) first() (int, plan.Micros) {
	which, where := plan.None, m.dur
	if !m.careful {
		return which, where
	}
	for i := range m.stops {
		if at := max(m.at, m.stops[i].strikes(m.dur)); at < where {
			which, where = i, at
		}
	}
	return which, where
}

// Strike says which stop strikes now, after the work that Start or Resume announced;
// None if the cycle ends instead. A quiet cycle has none.
func (m *Machine) Strike() int {
	which, where := m.first()
	if which != plan.None {
		m.reached(where)
		m.point = point{share: m.share(), work: where}
		if s := &m.stops[which]; s.plan.Clock == plan.CycleClock {
			m.point.share = s.due
		}
		m.stops[which].renew(m.point)
		m.renew(which)
	}
	return which
}

// Interrupt says that something from outside stops the cycle with work left to
// the next event.
func (m *Machine) Interrupt(left plan.Micros) {
	m.makeCareful()
	_, where := m.first()
	m.reached(where - left)
	m.point = point{share: m.share(), work: m.at}
}

// share is how much of the cycle under way has been done, in millionths.
func (m *Machine) share() int64 { return int64(m.at * plan.Cycle / m.dur) }

// renew starts the clocks anew that a stop renews beside its own.
func (m *Machine) renew(cause int) {
	for _, i := range m.stops[cause].plan.Renews {
		m.stops[i].renew(m.point)
	}
}

// Renew starts the clocks anew that a stop of the calendar renews.
func (m *Machine) Renew(cause int) {
	if len(m.stops[cause].plan.Renews) == 0 {
		return
	}
	m.point = point{}
	if m.careful {
		m.point = point{share: m.share(), work: m.at}
	} else {
		m.settle()
	}
	m.renew(cause)
	m.ask()
}

// Lose ends a cycle that a stop has struck or interrupted: it counts for nothing.
func (m *Machine) Lose() {
	m.careful = false
	for i := range m.stops {
		m.stops[i].lost(m.point)
	}
	m.ask()
}

// reached says that work has ended at a point of the cycle.
func (m *Machine) reached(at plan.Micros) {
	m.scrap.worked(at - m.at)
	if m.plan.Pace.Ramp > 0 {
		done := m.pace.work(m.ramp, at-m.at)
		m.base -= done
		if m.ramp >= 0 {
			m.ramp += done
		}
	}
	m.at = at
}

// makeCareful turns a quiet cycle under way into a careful one: as if it had
// started as such.
func (m *Machine) makeCareful() {
	if m.careful {
		return
	}
	m.quietCycles++
	m.quietWork += m.dur
	m.settle()
	m.careful, m.doomed = true, false
	m.base, m.ramp = float64(m.dur), -1
}

// Stopped says that an own stop, or a change of material, of this length is over.
func (m *Machine) Stopped(length plan.Micros) {
	if len(m.scrap.afterStop) == 0 {
		return
	}
	if !m.careful { // between cycles
		m.settle()
	}
	m.scrap.pause(m.scrap.afterStop, length)
	m.ask()
}

// Resume goes on with the cycle after a pause and returns the work up to the
// next stop in it, or to its end.
func (m *Machine) Resume(pause plan.Micros) plan.Micros {
	if pause > m.watch {
		m.scrap.pause(m.scrap.afterStandstill, pause)
		if m.pace.standstill(pause) {
			m.ramp = 0
			m.dur = m.at + m.pace.onRamp(plan.Micros(math.Round(m.base)))
		}
	}
	m.doomed = m.doomed || m.scrap.time > 0
	return m.next()
}

// End ends a cycle that is not quiet and settles the fate of its pieces: how
// many are good, unless it is scrapped. Rejected tells of the others.
func (m *Machine) End() (good int64, scrapped bool) {
	m.careful = false
	m.passed(1, m.dur)
	m.scrap.worked(m.dur - m.at)
	if m.scrap.left > 0 || m.doomed {
		m.scrap.left = max(0, m.scrap.left-1)
		m.ask()
		return 0, true
	}
	good = m.plan.Gives
	for i := range m.rejects {
		good = m.rejects[i].of(good)
	}
	m.ask()
	return good, false
}

// Rejected is what the i-th place of rejects rejected of the cycle that has ended.
func (m *Machine) Rejected(i int) int64 { return m.rejects[i].last }

// KnownScrap says that the next cycle is already known to be scrapped.
func (m *Machine) KnownScrap() bool { return m.scrap.open() }

// UsedUp is the first stock, by name, that has to be changed before the next
// cycle, counted behind the stops; None if there is none.
func (m *Machine) UsedUp() int {
	if m.quietCycles > 0 || len(m.stocks) == 0 {
		return plan.None
	}
	return m.usedUp()
}

func (m *Machine) usedUp() int {
	m.settle()
	for i := range m.stocks {
		if m.stocks[i].usedUp() {
			return len(m.stops) + i
		}
	}
	return plan.None
}

// Quiet says that the cycle under way ends without a stop, a reject or scrap,
// so that Strike and End need not be asked.
func (m *Machine) Quiet() bool { return !m.careful }

// Change puts a new stock in; cause is what UsedUp returned.
func (m *Machine) Change(cause int) {
	m.settle()
	m.stocks[cause-len(m.stops)].change()
	m.ask()
}

// Lasts draws the duration of the work for a stop or a change.
func (m *Machine) Lasts(cause int) plan.Micros {
	if cause < len(m.stops) {
		s := &m.stops[cause]
		return plan.Micros(draw.Micros(&s.plan.Work.Lasts, &s.lasts))
	}
	s := &m.stocks[cause-len(m.stops)]
	return plan.Micros(draw.Micros(&s.plan.Work.Lasts, &s.work))
}

// CalendarAge draws the time to the next strike of a calendar stop.
func (m *Machine) CalendarAge(cause int) plan.Micros { return plan.Micros(m.stops[cause].age()) }

// Work says who is asked for a cause.
func (m *Machine) Work(cause int) *plan.Work {
	if cause < len(m.stops) {
		return &m.stops[cause].plan.Work
	}
	return &m.stocks[cause-len(m.stops)].plan.Work
}
