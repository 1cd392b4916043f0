package study

import (
	"tuckline/internal/estimate"
	"tuckline/sim"
)

// Precision says how a half-width asked for was reached.
type Precision struct {
	// Asked is the half-width asked for, as a share of the mean; 0 without.
	Asked float64
	// Looks is how often the interval was looked at; Reached that the last look met the target.
	Looks   int
	Reached bool
}

// runUntilPrecise adds replications until the interval of the answer is as narrow as
// asked for, or no more are allowed. It looks only when the rule says so.
func (j *job) runUntilPrecise(p pass) []sim.Record {
	run := j.scenario.Run
	rule := estimate.NewPrecision(run.HalfWidth, run.Confidence, run.AtMost)
	j.precision.Asked = run.HalfWidth
	var records []sim.Record
	left := 0 // that did not finish their orders: others take their place
	for !rule.Done() {
		p.from, p.to = len(records)+1, min(rule.Wanted()+left, run.AtMost)
		j.wanted = p.to
		records = append(records, p.run(j.ctx)...)
		if len(records) < p.to {
			break // interrupted
		}
		counted := Counted(j.scenario, records)
		left = len(records) - len(counted)
		rule = rule.Look(totals(j, counted))
		if len(records) >= run.AtMost {
			break
		}
	}
	j.precision.Looks, j.precision.Reached = rule.Looks, rule.Reached
	return records
}

// totals are the good pieces of the answer of each record.
func totals(j *job, records []sim.Record) []float64 {
	return columns{records: records, confidence: j.scenario.Run.Confidence}.column(total(j.scenario))
}
