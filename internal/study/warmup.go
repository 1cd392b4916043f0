package study

import (
	"context"
	"crypto/sha256"
	"encoding/binary"

	"tuckline/internal/estimate"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// The pilot that finds the warm-up: its replications, and into how many intervals its
// run is divided.
const (
	pilotReplications = 20
	pilotIntervals    = 300
)

// WarmUp says how the warm-up was found.
type WarmUp struct {
	// Found says that a pilot looked for it; Length is what it found.
	Found  bool
	Length sim.Micros
	// Doubled says that the window was doubled because the warm-up reached half of
	// the pilot, Unsettled that it still did then.
	Doubled, Unsettled bool
}

// findWarmUp resolves `warm-up: auto`. A pilot of 20 replications with random
// numbers of its own runs for twice the window; the good output of each 1/300 of
// it, averaged over the pilot, is cut by MSER-5. All replications then run with
// that fixed cut. If the cut is at half of the pilot, the window is doubled, once.
func findWarmUp(ctx context.Context, s *scenario.Scenario, m *sim.Model, workers int) (*scenario.Scenario, WarmUp) {
	if !s.Run.AutoWarmUp {
		return s, WarmUp{}
	}
	found := WarmUp{Found: true}
	settled := *s
	cut, atHalf := pilot(ctx, &settled, m, workers)
	if atHalf {
		found.Doubled = true
		settled.Run.Measure *= 2
		cut, found.Unsettled = pilot(ctx, &settled, m, workers)
	}
	found.Length, settled.Run.WarmUp = cut, cut
	return &settled, found
}

// pilot runs the pilot and returns the cut, and whether it is at half of the run.
func pilot(ctx context.Context, s *scenario.Scenario, m *sim.Model, workers int) (cut sim.Micros, atHalf bool) {
	every := max(1, 2*s.Run.Measure/pilotIntervals)
	seed := pilotSeed(s.Run.Seed)
	p := pass{
		from: 1, to: pilotReplications, workers: workers, finished: func() {},
		newEngine: func() engine { return m.NewEngine() },
		options: func(replication int) sim.Options {
			return sim.Options{Seed: seed, Replication: replication, Measure: pilotIntervals * every, Every: every}
		},
	}
	truncation, ok := estimate.MSER5(estimate.MeanSeries(outputSeries(s, p.run(ctx))))
	if !ok {
		return 0, false
	}
	return sim.Micros(truncation.Observations) * every, truncation.AtHalf
}

// pilotSeed gives the pilot streams that no replication of the study has.
func pilotSeed(seed uint64) uint64 {
	sum := sha256.Sum256(binary.BigEndian.AppendUint64([]byte("pilot"), seed))
	return binary.BigEndian.Uint64(sum[:])
}

// outputSeries is the good output of each interval, a series for each replication.
func outputSeries(s *scenario.Scenario, records []sim.Record) [][]float64 {
	all := make([][]float64, len(records))
	for i := range records {
		for _, passed := range records[i].Series {
			sum := int64(0)
			for _, station := range s.Answer.CountedAfter {
				sum += passed[station]
			}
			all[i] = append(all[i], float64(sum))
		}
	}
	return all
}
