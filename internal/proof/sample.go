package proof

import (
	"context"
	"fmt"
	"hash/fnv"
	"math"

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
	c            *Case
	engine       *sim.Engine
	seed         uint64
	n            int
	parts, whole [][]float64
}

func newSampler(c *Case, seed string) (*sampler, error) {
	model, err := sim.Compile(c.line)
	if err != nil {
		return nil, fmt.Errorf("case %s: %w", c.Name, err)
	}
	return &sampler{
		c: c, engine: model.NewEngine(), seed: seedOf(seed),
		parts: make([][]float64, len(c.figures)), whole: make([][]float64, len(c.figures)),
	}, nil
}

// until runs replications up to the number n.
func (s *sampler) until(ctx context.Context, n int) error {
	for ; s.n < n; s.n++ {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		rec := s.run(s.c.measure)
		later := rec
		if s.c.later > 0 {
			rec.Stations, later.Stations = append([]sim.StationRecord(nil), rec.Stations...), nil
			later = s.run(s.c.later)
		}
		if rec.End != sim.HorizonReached {
			return fmt.Errorf("case %s: a replication ended with %s", s.c.Name, rec.End)
		}
		s.keep(&rec, &later)
	}
	return nil
}

func (s *sampler) run(window sim.Micros) sim.Record {
	return s.engine.Run(sim.Options{Seed: s.seed, Replication: s.n, WarmUp: s.c.warmUp, Measure: window})
}

// keep adds what the figures read; a slope keeps the count at the later edge and at the first.
func (s *sampler) keep(rec, later *sim.Record) {
	for i, f := range s.c.figures {
		part, whole := f.of(rec)
		if f.kind == slope {
			whole = part
			part, _ = f.of(later)
		}
		s.parts[i], s.whole[i] = append(s.parts[i], part), append(s.whole[i], whole)
	}
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
