package keyfigure

import (
	"math"

	"tuckline/sim"
)

// pick is what mis-picks of a material do.
type pick struct {
	// tries is the mean number of tries a cycle, missed the share of cycles in which all fail.
	tries, missed float64
}

// newPick follows from independent tries of which a share fails, repeated at most n times: the
// mean is (1 - share^(n+1))/(1 - share), all fail in share^(n+1) (geometric series).
func newPick(m sim.MisPicks) pick {
	if m.Share <= 0 {
		return pick{tries: 1}
	}
	missed := math.Pow(m.Share, float64(m.Retries+1))
	return pick{tries: (1 - missed) / (1 - m.Share), missed: missed}
}

// seenTries is the number from which three digits show that there are more than one.
const seenTries = 1.005

// extraTries is the mean number of tries that come to the first ones of a cycle, over all
// materials: each takes the time of one cycle at set speed.
func extraTries(line *sim.Station) (sum float64) {
	for _, m := range line.Materials {
		sum += newPick(m.MisPicks).tries - 1
	}
	return sum
}
