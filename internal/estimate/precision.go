package estimate

import "math"

// firstLook is the number of replications at the first look at an interval.
const firstLook = 20

// Precision is the rule that ends a study when its interval is narrow enough: a
// state machine that draws nothing and runs nothing. It looks only at 20, 28, 40,
// 56 … replications, each 1.4 times the last, rounded up; looking after every
// replication would stop too often by luck. Start with NewPrecision, run up to
// Wanted replications, hand all values to Look, and so on until it is done.
type Precision struct {
	relative, confidence float64
	most                 int
	next                 int
	// Looks is how often the interval was looked at, to be reported beside it.
	Looks int
	// Reached says that the last look met the target.
	Reached bool
	// Interval is that of the last look.
	Interval Interval
}

// NewPrecision asks for a half-width of the share relative of the true mean, such
// as 0.02, with at most most replications (at least 2). A last look at most takes
// the place of the one that would lie beyond.
func NewPrecision(relative, confidence float64, most int) Precision {
	most = max(most, 2)
	return Precision{relative: relative, confidence: confidence, most: most, next: min(firstLook, most)}
}

// Wanted is the number of replications that the next look needs; 0 when there is none.
func (p Precision) Wanted() int {
	if p.Done() {
		return 0
	}
	return p.next
}

// Done says that the target is reached or that no more replications are allowed.
func (p Precision) Done() bool {
	return p.Reached || p.Looks > 0 && p.Interval.N >= p.most
}

// Look judges the first Wanted values of the sample: half-width / |mean| at most
// g / (1 + g), g being the share asked for (Law, Simulation Modeling and Analysis,
// ch. 9). With fewer values, or when done, nothing changes.
func (p Precision) Look(sample []float64) Precision {
	if p.Done() || len(sample) < p.next {
		return p
	}
	p.Looks++
	p.Interval = Of(sample[:p.next], p.confidence)
	p.Reached = p.Interval.HalfWidth() <= p.relative/(1+p.relative)*math.Abs(p.Interval.Mean)
	p.next = min((7*p.next+4)/5, p.most)
	return p
}
