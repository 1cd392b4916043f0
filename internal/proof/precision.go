package proof

import (
	"context"
	"fmt"
	"math"
)

// Precision is how narrow intervals have to be, half-width to value.
type Precision struct {
	// Usual is for most figures, Rare for standard deviations, variances and probabilities under 0.05.
	Usual, Rare float64
}

// The two precisions.
var (
	Quick = Precision{Usual: 0.01, Rare: 0.05}
	Full  = Precision{Usual: 0.003, Rare: 0.05}
)

// rare is the probability under which a figure is hard to hit.
const rare = 0.05

// wanted is the half-width that figure f may have; a value of 0 is either hit or not.
func (p Precision) wanted(f *figure) float64 {
	if f.exact == 0 {
		return math.Inf(1)
	}
	share := p.Usual
	if f.kind != ratio || f.share && f.exact < rare {
		share = p.Rare
	}
	return share * math.Abs(f.exact)
}

// reserve is what is added to the number of replications that a look asks for, so that the
// next look is mostly the last.
const reserve = 1.05

// looks bounds the number of looks; a case that is not narrow then is an error.
const looks = 12

// toPrecision runs a first number of replications and then as many as the widest interval needs. The
// rule looks at widths only, never at whether a value is inside.
func (s *sampler) toPrecision(ctx context.Context, p Precision) error {
	n := s.c.least
	for range looks {
		if err := s.until(ctx, n); err != nil {
			return err
		}
		more := 1.0
		for i, f := range s.c.figures {
			more = max(more, math.Pow(s.halfWidth(i)/p.wanted(f), 2))
		}
		if more == 1 {
			return nil
		}
		n = int(math.Ceil(reserve * more * float64(s.n)))
	}
	return fmt.Errorf("case %s: after %d replications an interval is still wider than wanted", s.c.Name, s.n)
}

// between is the time from the end of the window to that of the later one, in seconds or in the unit
// of the case.
func (c *Case) between() float64 { return float64(c.later-c.measure) / c.unit }
