package plain

import "tuckline/sim/internal/plan"

// delay follows since when a level has been high enough, and low enough, for a speed step: Never
// if it is not. A level that lasts no time does not count.
type delay struct {
	step         int
	from, backAt int64
	high, low    plan.Micros
}

// connectDelays lets the link before a station follow its speed steps with a delay. Taking from it is then
// not simple, nor is it where empty pockets are counted.
func (s *station) connectDelays() {
	if s.in == nil {
		return // it reads no level
	}
	for i := range s.plan.Pace.Steps {
		if step := &s.plan.Pace.Steps[i]; step.Delay > 0 {
			s.delays = append(s.delays, delay{step: i, from: step.From, backAt: step.BackAt})
		}
	}
	for i := range s.delays {
		s.in.delays = append(s.in.delays, &s.delays[i])
	}
	s.simple = s.simple && len(s.delays) == 0 && s.plan.EmptyPockets == 0
	s.eager = s.simple && !s.plan.BlocksBefore
}

func (s *station) resetDelays() {
	for i := range s.delays {
		s.delays[i].high, s.delays[i].low = plan.Never, plan.Never
	}
}

// ageDelays says that the level of a link has stayed since its mark.
func (e *Engine) ageDelays(l *link) {
	for _, d := range l.delays {
		d.high = since(d.high, l.mark, l.level >= d.from)
		d.low = since(d.low, l.mark, l.level <= d.backAt)
	}
}

// since is when something began that holds from a mark on, or Never if it does not hold.
func since(before, mark plan.Micros, holds bool) plan.Micros {
	switch {
	case !holds:
		return plan.Never
	case before == plan.Never:
		return mark
	}
	return before
}

// readDelays tells a station for how long the levels of its steps have stayed, just before it takes its input.
func (e *Engine) readDelays(s *station) {
	if len(s.delays) > 0 {
		e.clock(s.in)
	}
	for i := range s.delays {
		d := &s.delays[i]
		s.machine.Held(d.step, e.lasted(d.high), e.lasted(d.low))
	}
}

func (e *Engine) lasted(from plan.Micros) plan.Micros {
	if from == plan.Never {
		return 0
	}
	return e.now - from
}
