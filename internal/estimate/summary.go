package estimate

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
)

// Summary is an estimate with what speaks against relying on it.
type Summary struct {
	Interval
	Doubts []Doubt
}

// Doubt is one reason not to rely on an interval.
type Doubt struct {
	Kind DoubtKind
	// Have is the number of replications there are, Needed how many would settle
	// the doubt; 0 if that cannot be said.
	Have, Needed int
	// Width is the half-width as a share of the mean, Wanted what was asked for; of Wide only.
	Width, Wanted float64
}

// DoubtKind says what a doubt is about.
type DoubtKind string

const (
	// NoInterval: fewer than two replications.
	NoInterval DoubtKind = "no interval"
	// Few: too few replications to see whether the interval can be trusted.
	Few DoubtKind = "few replications"
	// Wide: the interval is wider than asked for.
	Wide DoubtKind = "wide interval"
	// Skewed: the values lie so lopsidedly that the t interval misses more often than it says.
	Skewed DoubtKind = "skewed values"
)

// fewest is the number of replications below which an interval is doubted: common practice, no source.
const fewest = 10

// Summarise is Of with its doubts. wanted is the half-width asked for as a share
// of the mean, such as 0.02; 0 asks for none.
func Summarise(sample []float64, confidence, wanted float64) Summary {
	s := Summary{Interval: Of(sample, confidence)}
	if !s.Given() {
		s.Doubts = append(s.Doubts, Doubt{Kind: NoInterval, Have: s.N, Needed: fewest})
		return s
	}
	if s.N < fewest {
		s.Doubts = append(s.Doubts, Doubt{Kind: Few, Have: s.N, Needed: fewest})
	}
	if width := s.HalfWidth(); wanted > 0 && width > wanted*math.Abs(s.Mean) && s.Mean != 0 {
		s.Doubts = append(s.Doubts, Doubt{
			Kind: Wide, Have: s.N, Needed: NeededRelative(s.Interval, wanted, confidence),
			Width: width / math.Abs(s.Mean), Wanted: wanted,
		})
	}
	if needed := neededForSkew(sample); needed > s.N {
		s.Doubts = append(s.Doubts, Doubt{Kind: Skewed, Have: s.N, Needed: needed})
	}
	return s
}

// neededForSkew is Cochran's rule for a 95 % interval of a mean: more than 25 G²
// values, G being the skewness (Cochran, Sampling Techniques, 2.15; from memory).
// A skewness within twice its standard error for normal values says nothing.
func neededForSkew(sample []float64) int {
	if len(sample) < fewest || stat.StdDev(sample, nil) == 0 {
		return 0
	}
	n := float64(len(sample))
	g := stat.Skew(sample, nil)
	if math.Abs(g) <= 2*math.Sqrt(6*n*(n-1)/((n-2)*(n+1)*(n+3))) {
		return 0
	}
	return int(math.Floor(25*g*g)) + 1
}

// String is the doubt in a sentence.
func (d Doubt) String() string {
	switch d.Kind {
	case NoInterval:
		return fmt.Sprintf("%s: no interval can be given; run at least %d.", count(d.Have), d.Needed)
	case Few:
		return fmt.Sprintf("Only %s: too few to see whether the interval can be trusted; run at least %d.", count(d.Have), d.Needed)
	case Wide:
		text := fmt.Sprintf("The interval reaches ± %.2g %% of the mean, ± %.2g %% was asked for", 100*d.Width, 100*d.Wanted)
		if d.Needed == 0 {
			return text + "; more than 10 million replications would be needed."
		}
		return fmt.Sprintf("%s; about %d replications would reach it, %d were run.", text, d.Needed, d.Have)
	case Skewed:
		return fmt.Sprintf("The results of the %s are lopsided; about %d would be needed for an interval that can be trusted.", count(d.Have), d.Needed)
	}
	return ""
}

func count(n int) string {
	if n == 1 {
		return "1 replication"
	}
	return fmt.Sprintf("%d replications", n)
}
