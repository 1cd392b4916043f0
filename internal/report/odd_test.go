package report

import (
	"io"
	"math"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/study"
	"tuckline/sim"
)

// Outcomes at the edge of what a study can give: each must make a page and a summary.
func TestOddOutcomes(t *testing.T) {
	for name, bend := range map[string]func(*study.Outcome){
		"one shift": func(o *study.Outcome) {
			o.Shifts, o.RunningMean, o.Records = o.Shifts[:1], nil, o.Records[:1]
			o.Results.Output.Total.N = 1
		},
		"two shifts": func(o *study.Outcome) {
			o.Shifts, o.RunningMean, o.Records = o.Shifts[:2], o.RunningMean[:1], o.Records[:2]
		},
		"no shift at all": func(o *study.Outcome) {
			o.Shifts, o.RunningMean, o.Records = nil, nil, nil
			o.Results.Output = result.Output{Unit: "cartons"}
		},
		"always the same": func(o *study.Outcome) {
			for i := range o.Shifts {
				o.Shifts[i] = 28800
			}
			for i := range o.RunningMean {
				o.RunningMean[i] = result.Estimate{Mean: 28800, Low: 28800, High: 28800, N: i + 2}
			}
		},
		"no output": func(o *study.Outcome) {
			for i := range o.Shifts {
				o.Shifts[i] = 0
			}
			for i := range o.RunningMean {
				o.RunningMean[i] = result.Estimate{N: i + 2}
			}
			o.Causes, o.Span = nil, study.Span{}
		},
		"no trace": func(o *study.Outcome) { o.Trace = sim.Trace{} },
		"a buffer without limit": func(o *study.Outcome) {
			o.Scenario.Line.Buffers[1].Holds, o.Results.Buffers[1].Capacity, o.Classes[1] = sim.Unlimited, -1, nil
		},
		"no stops, no losses, no crews": func(o *study.Outcome) {
			o.Results.Crews, o.Scenario.Line.Crews = nil, nil
			for i := range o.Results.Stations {
				s := &o.Results.Stations[i]
				s.Stops, s.Pieces = nil, result.Pieces{Made: s.GivenPerHour, Good: s.GivenPerHour}
				o.Scenario.Line.Stations[i].Stops = nil
			}
			o.Trace.Stops = nil
		},
		"the constraint has no cause": func(o *study.Outcome) { o.Causes = nil },
		"a ratio that has no value": func(o *study.Outcome) {
			o.Results.Crews[0].MeanWaitS = result.Estimate{Mean: math.NaN(), Low: math.NaN(), High: math.NaN(), N: 0}
			o.Span.Recovered = result.Estimate{}
		},
		"a constraint of no name": func(o *study.Outcome) { o.Constraint = "" },
	} {
		t.Run(name, func(t *testing.T) {
			o := inventedOutcome()
			bend(o)
			if err := layoutOnly(io.Discard, Page{Outcome: o}); err != nil {
				t.Error(err)
			}
			if err := Terminal(io.Discard, Page{Outcome: o}); err != nil {
				t.Error(err)
			}
		})
	}
}
