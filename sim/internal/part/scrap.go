package part

import "tuckline/sim/internal/plan"

// scrap counts the cycles, or the time of running, that are lost after a pause.
type scrap struct {
	afterStop, afterStandstill []plan.Scrap
	left                       int64
	time                       plan.Micros
}

func (s *scrap) reset(st *plan.Station) {
	*s = scrap{afterStop: st.AfterStop, afterStandstill: st.AfterStandstill}
}

// pause applies the rule with the longest limit passed, of rules with the same limit the
// larger number. A new pause sets the count to the larger of the rest and the new number.
func (s *scrap) pause(rules []plan.Scrap, length plan.Micros) {
	applies := plan.Scrap{LongerThan: -1}
	for _, rule := range rules {
		switch {
		case length <= rule.LongerThan || rule.LongerThan < applies.LongerThan:
		case rule.LongerThan > applies.LongerThan:
			applies = rule
		default:
			applies.Cycles, applies.Lasts = max(applies.Cycles, rule.Cycles), max(applies.Lasts, rule.Lasts)
		}
	}
	s.left = max(s.left, applies.Cycles)
	s.time = max(s.time, applies.Lasts)
}

// open says that what runs now is scrap.
func (s *scrap) open() bool { return s.left > 0 || s.time > 0 }

// worked says that so much work has passed.
func (s *scrap) worked(d plan.Micros) { s.time = max(0, s.time-d) }

// watch is the shortest standstill that matters.
func (s *scrap) watch() plan.Micros {
	shortest := plan.Never
	for _, rule := range s.afterStandstill {
		shortest = min(shortest, rule.LongerThan)
	}
	return shortest
}
