package proof

import (
	"context"
	"errors"
	"fmt"
	"hash/fnv"
	"math"
	"sync"
	"sync/atomic"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/internal/estimate"
	"tuckline/sim"
)

// confidence is that of every interval.
const confidence = 0.99

// seedOf is the hash of a name, so that nobody chooses a seed and none ever changes.
func seedOf(name string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(name))
	return h.Sum64()
}

// sampler runs replications of one case and keeps what its figures need of each.
type sampler struct {
	c    *Case
	seed uint64
	// workers is how many replications run at a time; the result does not depend on it.
	workers      int
	engines      []*sim.Engine
	n            int
	parts, whole [][]float64
}

func newSampler(c *Case, seed string, workers int) (*sampler, error) {
	model, err := sim.Compile(c.line)
	if err != nil {
		return nil, fmt.Errorf("case %s: %w", c.Name, err)
	}
	s := &sampler{
		c: c, seed: seedOf(seed), workers: workers,
		parts: make([][]float64, len(c.figures)), whole: make([][]float64, len(c.figures)),
	}
	for range workers {
		s.engines = append(s.engines, model.NewEngine())
	}
	return s, nil
}

// until runs replications up to the number n. Each has its place, whoever runs it.
func (s *sampler) until(ctx context.Context, n int) error {
	for i := range s.c.figures {
		s.parts[i] = append(s.parts[i], make([]float64, max(n-s.n, 0))...)
		s.whole[i] = append(s.whole[i], make([]float64, max(n-s.n, 0))...)
	}
	var next atomic.Int64
	next.Store(int64(s.n))
	errs := make([]error, s.workers)
	var wait sync.WaitGroup
	for w, engine := range s.engines {
		wait.Go(func() {
			for k := int(next.Add(1) - 1); k < n && errs[w] == nil; k = int(next.Add(1) - 1) {
				if errs[w] = ctx.Err(); errs[w] == nil {
					errs[w] = s.replication(engine, k)
				}
			}
		})
	}
	wait.Wait()
	s.n = max(n, s.n)
	return errors.Join(errs...)
}

// replication runs number k and keeps what the figures read; a slope keeps the count at the
// later edge and at the first.
func (s *sampler) replication(engine *sim.Engine, k int) error {
	rec := s.run(engine, k, s.c.measure)
	if rec.End != sim.HorizonReached {
		return fmt.Errorf("case %s: a replication ended with %s", s.c.Name, rec.End)
	}
	for i, f := range s.c.figures {
		s.parts[i][k], s.whole[i][k] = f.of(&rec)
	}
	if s.c.later == 0 {
		return nil
	}
	rec = s.run(engine, k, s.c.later)
	for i, f := range s.c.figures {
		if f.kind == slope {
			s.whole[i][k] = s.parts[i][k]
			s.parts[i][k], _ = f.of(&rec)
		}
	}
	return nil
}

func (s *sampler) run(engine *sim.Engine, k int, window sim.Micros) sim.Record {
	return engine.Run(sim.Options{Seed: s.seed, Replication: k, WarmUp: s.c.warmUp, Measure: window})
}

// interval is the 99 % interval of figure i over the replications so far.
func (s *sampler) interval(i int) estimate.Interval {
	switch s.c.figures[i].kind {
	case spread:
		groups := each(s.parts[i], func(x float64) []float64 { return []float64{x} })
		return estimate.Spread(groups, confidence)
	case slope:
		return s.growth(i)
	}
	return s.quotient(i)
}

// quotient is a ratio of sums. Its interval is that of the parts less the ratio times the
// wholes, replication by replication (delta method); with equal wholes it is the usual t interval.
func (s *sampler) quotient(i int) estimate.Interval {
	whole := stat.Mean(s.whole[i], nil)
	if whole == 0 {
		return estimate.Interval{N: s.n}
	}
	ratio := stat.Mean(s.parts[i], nil) / whole
	values := make([]float64, s.n)
	for k := range values {
		values[k] = ratio + (s.parts[i][k]-ratio*s.whole[i][k])/whole
	}
	return estimate.Of(values, confidence)
}

// growth is the difference of the variances at the two edges over the time between them; its
// interval is that of the differences of squares.
func (s *sampler) growth(i int) estimate.Interval {
	late, early := stat.Mean(s.parts[i], nil), stat.Mean(s.whole[i], nil)
	scale := float64(s.n) / float64(s.n-1) / s.c.between()
	values := make([]float64, s.n)
	for k := range values {
		a, b := s.parts[i][k]-late, s.whole[i][k]-early
		values[k] = scale * (a*a - b*b)
	}
	return estimate.Of(values, confidence)
}

// halfWidth is about that of the interval of figure i. For a spread it is the usual one for large
// samples, with the kurtosis of the sample, since a bootstrap is too long for every look.
func (s *sampler) halfWidth(i int) float64 {
	if s.c.figures[i].kind != spread {
		return s.interval(i).HalfWidth()
	}
	sd, excess := stat.StdDev(s.parts[i], nil), stat.ExKurtosis(s.parts[i], nil)
	return distuv.UnitNormal.Quantile((1+confidence)/2) * sd * math.Sqrt((excess+2)/(4*float64(s.n)))
}
