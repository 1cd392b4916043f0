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
	// all are all replications, those included that are in no estimate.
	all      []sim.Record
	scenario *scenario.Scenario
	model    *sim.Model
	figures  keyfigure.Figures
	// stopCrews are the crews of the causes of each station.
	stopCrews [][]string
}

func viewOf(s *scenario.Scenario, m *sim.Model, records []sim.Record) view {
	v := view{columns: columns{Counted(s, records), s.Run.Confidence, answerSpan(s)}, all: records, scenario: s, model: m, figures: keyfigure.Derive(s)}
	for i := range s.Line.Stations {
		v.stopCrews = append(v.stopCrews, m.StopCrews(i))
	}
	return v
}
