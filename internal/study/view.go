package study

import (
	"tuckline/internal/keyfigure"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// view is what results are taken from: the records of a model, and what its
// scenario and the derived figures say of it.
type view struct {
	columns
	scenario *scenario.Scenario
	model    *sim.Model
	figures  keyfigure.Figures
}

func viewOf(s *scenario.Scenario, m *sim.Model, records []sim.Record) view {
	return view{columns{records, s.Run.Confidence, answerSpan(s), s.Run.UntilOrders}, s, m, keyfigure.Derive(s)}
}
