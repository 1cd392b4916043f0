package study

import (
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// The engine that ran and why; there is one so far.
const (
	engineName   = "plain"
	engineReason = "the only engine of this version"
)

// Summarise turns records into results. It is a pure function of the scenario
// and the records in order of replication: parts that are put together give
// the bytes of one run. Measures that are not in the list are left out.
func Summarise(s *scenario.Scenario, m *sim.Model, records []sim.Record, show []string) result.Results {
	return viewOf(s, m, records).results(show)
}

func (v view) results(show []string) result.Results {
	s := v.scenario
	r := result.Results{
		Format: result.Format, Title: s.Title, ScenarioHash: s.Hash(), Seed: s.Run.Seed,
		Replications: len(v.records), Unfinished: len(v.all) - len(v.records), Confidence: s.Run.Confidence,
		MeasuredHours: hours(s.ScheduledMeasure()), WarmUpHours: hours(s.ScheduledWarmUp()),
		Engine: engineName, EngineReason: engineReason,
		Output:     v.output(),
		Stations:   v.stations(),
		Buffers:    v.buffers(),
		Crews:      v.crews(s.Line.Crews),
		LossTrees:  v.lossTrees(),
		KeyFigures: v.keyFigures(),
		Orders:     v.orders(),
		Measures:   []result.Measure{},
		Warnings:   warnings(v),
		Ends:       ends(v.all),
	}
	for _, words := range show {
		found, _ := measuresAsked(words, s, v.model) // what is not known is left out
		for _, one := range found {
			r.Measures = append(r.Measures, one.rows(v)...)
		}
	}
	return r
}

func ends(records []sim.Record) map[string]int {
	count := map[string]int{}
	for i := range records {
		count[records[i].End.String()]++
	}
	return count
}
