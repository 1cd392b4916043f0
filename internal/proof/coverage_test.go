package proof

import (
	"flag"
	"fmt"
	"math"
	"runtime"
	"sync"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/internal/estimate"
	"tuckline/sim"
)

// studies is how many the coverage is counted in; make proof takes 1,000.
var studies = flag.Int("studies", 120, "independent studies for the coverage of intervals")

// replicationsOfAStudy is few, as in a first study of a line.
const replicationsOfAStudy = 20

// covered are three lines with an exact output, and for each another one with a slightly different line,
// so that their difference is exact too. Both are run with the same random numbers.
var covered = [][2]string{{"TWO-2", "TWO-3"}, {"GER2-1", "GER2-15"}, {"EXPU-8", "EXPU-7"}}

// Of many independent studies, about 95 in 100 intervals hold the truth: of the mean output, and of
// the difference between two lines. The limits are those of the count with 99.9 % probability.
func TestIntervalsCover(t *testing.T) {
	low, high := limitsOfCount(*studies, 0.95, 0.999)
	for _, names := range covered {
		one, other := caseOf(t, names[0]), caseOf(t, names[1])
		mean, difference := coverage(t, one, other, *studies)
		t.Logf("%s: %.1f %% of the means; less %s: %.1f %% of the differences; limits %.1f to %.1f %%", one.Name, percentOf(mean), other.Name, percentOf(difference), percentOf(low), percentOf(high))
		if mean < low || mean > high {
			t.Errorf("%s: %d of %d intervals of the mean hold the truth, limits %d and %d", one.Name, mean, *studies, low, high)
		}
		if difference < low || difference > high {
			t.Errorf("%s less %s: %d of %d intervals hold the truth, limits %d and %d", one.Name, other.Name, difference, *studies, low, high)
		}
	}
}

func percentOf(n int) float64 { return 100 * float64(n) / float64(*studies) }

// coverage counts the studies whose intervals hold the exact values.
func coverage(t *testing.T, one, other *Case, n int) (mean, difference int) {
	next := make(chan int)
	var wait sync.WaitGroup
	var lock sync.Mutex
	for range runtime.GOMAXPROCS(0) {
		a, b := engineOf(t, one), engineOf(t, other)
		wait.Go(func() {
			for i := range next {
				seed := fmt.Sprintf("coverage of %s, study %d", one.Name, i)
				x, y := study(one, a, seed), study(other, b, seed)
				lock.Lock()
				mean += holds(estimate.Of(x, 0.95), one.figures[0].exact)
				difference += holds(estimate.Paired(x, y, 0.95), one.figures[0].exact-other.figures[0].exact)
				lock.Unlock()
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wait.Wait()
	return mean, difference
}

func engineOf(t *testing.T, c *Case) *sim.Engine {
	model, err := sim.Compile(c.line)
	if err != nil {
		t.Fatal(err)
	}
	return model.NewEngine()
}

// study is the primary figure in 20 replications, with windows as short as the warm-up allows.
func study(c *Case, e *sim.Engine, seed string) []float64 {
	x := make([]float64, replicationsOfAStudy)
	for r := range x {
		rec := e.Run(sim.Options{Seed: seedOf(seed), Replication: r, WarmUp: c.warmUp, Measure: 3 * c.warmUp})
		part, whole := c.figures[0].of(&rec)
		x[r] = part / whole
	}
	return x
}

func holds(i estimate.Interval, truth float64) int {
	if i.Low <= truth && truth <= i.High {
		return 1
	}
	return 0
}

// limitsOfCount are the counts between which n tries of the share lie with the probability.
func limitsOfCount(n int, share, probability float64) (low, high int) {
	law := distuv.Binomial{N: float64(n), P: share}
	tail := (1 - probability) / 2
	sum := 0.0
	low = -1
	for k := range n + 1 {
		sum += law.Prob(float64(k))
		if low < 0 && sum > tail {
			low = k
		}
		if sum >= 1-tail-1e-12 {
			return low, k
		}
	}
	return low, n
}

// 92.6 to 97.0 % of 1,000: within two in a thousand of the normal law, 0.95 ± 3.29 √(0.95 × 0.05 / 1000).
func TestLimitsOfCount(t *testing.T) {
	low, high := limitsOfCount(1000, 0.95, 0.999)
	half := 3.29 * math.Sqrt(0.95*0.05*1000)
	if math.Abs(float64(low)-(950-half)) > 3 || math.Abs(float64(high)-(950+half)) > 3 {
		t.Errorf("%d to %d, by the normal law %.0f to %.0f", low, high, 950-half, 950+half)
	}
}
