package stoplog

import (
	"fmt"
	"math/rand/v2"
	"slices"
)

// fewestDraws is the least number of bootstrap logs.
const fewestDraws = 100

// Goodness is how well a fitted law describes its log.
type Goodness struct {
	Distances
	// PAndersonDarling and PKolmogorovSmirnov are the chances of a distance at least as
	// large if the law were true, its parameters being fitted anew each time.
	PAndersonDarling, PKolmogorovSmirnov float64
	// Draws is the number of bootstrap logs that count; Failed is how many more could not be fitted.
	Draws, Failed int
}

// GoodnessOf holds a fitted law against the log it was fitted to: parametric
// bootstrap, p = (1 + number at least as far) / (draws + 1) (Stute, González
// Manteiga and Presedo Quindimil, Metrika 40 (1993) 243). Logs with open observations
// are refused, and so is a test of which more than half of the draws could not be fitted;
// draws must be at least 100, 2,000 leave a standard error of about 0.01.
func GoodnessOf(law Law, log []Observation, draws int) (Goodness, error) {
	seen, err := DistancesOf(law, log)
	if err != nil {
		return Goodness{}, err
	}
	null, err := NullDistances(law, log, draws)
	if err != nil {
		return Goodness{}, err
	}
	if 2*len(null) < draws {
		return Goodness{}, fmt.Errorf("%d of %d bootstrap logs could not be fitted: the test says nothing", draws-len(null), draws)
	}
	g := Goodness{Distances: seen, Draws: len(null), Failed: draws - len(null)}
	far, wide := 1, 1
	for _, d := range null {
		if d.AndersonDarling >= seen.AndersonDarling {
			far++
		}
		if d.KolmogorovSmirnov >= seen.KolmogorovSmirnov {
			wide++
		}
	}
	g.PAndersonDarling = float64(far) / float64(len(null)+1)
	g.PKolmogorovSmirnov = float64(wide) / float64(len(null)+1)
	return g, nil
}

// NullDistances are the distances of logs drawn from a law, of the size and with the
// thresholds of the given one, each to the law of that family fitted to it. Logs that
// cannot be fitted are missing.
func NullDistances(law Law, log []Observation, draws int) ([]Distances, error) {
	if draws < fewestDraws {
		return nil, fmt.Errorf("a bootstrap needs at least %d draws, %d were asked for", fewestDraws, draws)
	}
	source := rand.New(rand.NewPCG(0x73746f70, 0x6c6f67))
	drawn := slices.Clone(log)
	null := make([]Distances, 0, draws)
	for range draws {
		for i := range drawn {
			p := (float64(source.Uint64()>>11) + 0.5) / (1 << 53)
			drawn[i] = Observation{Value: quantileAbove(law, p, log[i].Above), Above: log[i].Above}
		}
		again, err := mostLikely(law.Kind(), drawn)
		if err != nil {
			continue
		}
		null = append(null, distances(again, drawn))
	}
	return null, nil
}
