package study

import "tuckline/sim"

// longestTrace is how much of a warm-up and of a window is traced at most: a
// trace holds every cycle, and its memory must not grow with the window.
const longestTrace = 24 * sim.Hour

// trace runs the beginning of the first replication once more, traced.
func (j *job) trace(o *Outcome) {
	run := j.plainOptions(j.options.From)
	run.WarmUp, run.Measure = min(run.WarmUp, longestTrace), min(run.Measure, longestTrace)
	run.Trace = &o.Trace
	record := j.model.NewEngine().Run(run)
	o.TracedFrom, o.Traced = run.WarmUp, record.Window
}
