package part

import "tuckline/sim/internal/plan"

// scrap counts the cycles that are lost after a pause.
type scrap struct {
	afterStop, afterStandstill []plan.Scrap
	left                       int64
}

func (s *scrap) reset(st *plan.Station) {
	s.afterStop, s.afterStandstill, s.left = st.AfterStop, st.AfterStandstill, 0
}

// pause applies the rule with the longest limit passed, of rules with the same limit the
// larger number. A new pause sets the count to the larger of the rest and the new number.
func (s *scrap) pause(rules []plan.Scrap, length plan.Micros) {
	longest, cycles := plan.Micros(-1), int64(0)
	for _, rule := range rules {
		switch {
		case length <= rule.LongerThan || rule.LongerThan < longest:
		case rule.LongerThan > longest:
			longest, cycles = rule.LongerThan, rule.Cycles
		default:
			cycles = max(cycles, rule.Cycles)
		}
	}
	s.left = max(s.left, cycles)
}

// watch is the shortest standstill that matters.
func (s *scrap) watch() plan.Micros {
	shortest := plan.Never
	for _, rule := range s.afterStandstill {
		shortest = min(shortest, rule.LongerThan)
	}
	return shortest
}
