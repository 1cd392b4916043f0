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
	c := columns{records: records, confidence: s.Run.Confidence}
	r := result.Results{
		Format: result.Format, Title: s.Title, ScenarioHash: Hash(s), Seed: s.Run.Seed,
		Replications: len(records), Confidence: s.Run.Confidence,
		MeasuredHours: hours(s.Run.Measure), WarmUpHours: hours(s.Run.WarmUp),
		Engine: engineName, EngineReason: engineReason,
		Output:   c.output(s),
		Stations: c.stations(s, m),
		Buffers:  c.buffers(m.Places()),
		Crews:    c.crews(s.Line.Crews),
		Measures: []result.Measure{},
		Warnings: warnings(s, records),
		Ends:     ends(records),
	}
	view := view{columns: c, scenario: s, places: m.Places()}
	for _, words := range show {
		if found, err := parseMeasure(words, s, m.Places()); err == nil {
			r.Measures = append(r.Measures, found.rows(view)...)
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
