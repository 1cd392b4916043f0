package part

import (
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
	// base is the work that was left then, in time at set speed; ramp is where the ramp stood then, heat what
	// was left of the time before work begins.
	base, ramp float64
	heat       plan.Micros
	// pocket says that an empty pocket runs through, and no cycle.
	pocket bool

	pace    pace
	stops   []stop
	stocks  []stock
	rejects []reject
	picks   []pick
	checks  []check
	signals signals
	scrap   scrap
	// doomed says that the cycle under way is scrap by time.
	doomed bool
	// point is where in the cycle the last stop struck.
	point point
}

// Reset makes the machine new for one replication.
func (m *Machine) Reset(pl *plan.Station, seed uint64, replication int) {
	stream := func(names ...string) draw.Stream { return draw.NewStream(seed, replication, names...) }
	m.plan, m.careful, m.pocket, m.at = pl, false, false, 0
	m.pace.reset(&pl.Pace, stream(pl.Streams, "cycle"))
	m.scrap.reset(pl)
	if m.stops == nil {
		m.stops, m.stocks = make([]stop, len(pl.Stops)), make([]stock, len(pl.Stocks))
		m.rejects, m.picks = make([]reject, len(pl.Rejects)), make([]pick, len(pl.Picks))
		m.checks = make([]check, len(pl.Checks))
	}
	m.signals.reset(pl.Stops)
	for i := range m.rejects {
		m.rejects[i].reset(&pl.Rejects[i], stream)
	}
	for i := range m.picks {
		m.picks[i].reset(&pl.Picks[i], stream)
	}
	for i := range m.stops {
		p := &pl.Stops[i]
		m.stops[i].reset(p, stream(p.Streams, "every", p.Name), stream(p.Streams, "lasts", p.Name))
	}
	for i := range m.stocks {
		p := &pl.Stocks[i]
		m.stocks[i].reset(p, stream)
	}
	for i := range m.checks {
		m.checks[i].reset(&pl.Checks[i], stream)
	}
	m.fixed = 0
	if len(pl.Pace.Steps) == 0 {
		m.fixed = pl.Pace.Fixed
	}
	m.watch = m.scrap.watch()
	if pl.Pace.Ramp > 0 || pl.Pace.Heat > 0 {
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
	for i := range m.checks {
		c, w := m.checks[i].quiet()
		cycles, work = min(cycles, c), min(work, w)
	}
	for i := range m.rejects {
		cycles = min(cycles, m.rejects[i].quiet())
	}
	for i := range m.picks {
		cycles = min(cycles, m.picks[i].quiet())
	}
	if m.scrap.open() || m.signals.count > 0 {
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
	for i := range m.picks {
		m.picks[i].passed(cycles)
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
	for i := range m.checks {
		m.checks[i].passed(cycles, work)
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
	m.begin(m.pace.long(d) + plan.Micros(m.pickAll())*d)
	m.doomed, m.point = m.scrap.time > 0, point{}
	return m.next()
}

// begin begins work that takes d at set speed.
func (m *Machine) begin(d plan.Micros) {
	m.at, m.base, m.ramp, m.heat = 0, float64(d), m.pace.ramp, m.pace.heat
	m.dur = m.pace.onRamp(d)
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
	if !m.careful || m.pocket {
		return which, where
	}
	for i := range m.stops {
		if at := max(m.at, m.stops[i].strikes(m.dur)); at < where {
			which, where = i, at
		}
	}
	return which, where
}

// End ends a cycle, usually one that is not quiet, and settles the fate of its pieces: how
// many are good, unless it is scrapped. Rejected tells of the others.
func (m *Machine) End() (good int64, scrapped bool) {
	m.makeCareful()
	m.careful = false
	m.passed(1, m.dur)
	m.scrap.worked(m.dur - m.at)
	scrapped = m.scrap.left > 0 || m.doomed
	m.picked(scrapped)
	if scrapped {
		m.scrap.left = max(0, m.scrap.left-1)
		for i := range m.rejects {
			r := &m.rejects[i]
			if r.scrapped(); r.full() {
				m.signals.raise(r.plan.Signal)
			}
		}
		for i := range m.stocks {
			m.stocks[i].wasted += m.stocks[i].plan.PerCycle
		}
		m.ask()
		return 0, true
	}
	good = m.plan.Gives
	for i := range m.rejects {
		r := &m.rejects[i]
		if good = r.of(good); r.full() {
			m.signals.raise(r.plan.Signal)
		}
	}
	m.ask()
	return good, false
}

// Rejected is what the i-th place of rejects rejected of the cycle that has ended.
func (m *Machine) Rejected(i int) Rejects { return m.rejects[i].last }

// KnownScrap says that the next cycle is already known to be scrapped.
func (m *Machine) KnownScrap() bool { return m.scrap.open() }

// Quiet says that the cycle under way ends without a stop, a reject or scrap,
// so that Strike and End need not be asked.
func (m *Machine) Quiet() bool { return !m.careful }
