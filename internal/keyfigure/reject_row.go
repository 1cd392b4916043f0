package keyfigure

import (
	"math"
	"slices"

	"tuckline/sim"
)

// rejectShare is the mean share of rejects of a station: with runs, of the chain of two
// states, by the cycles in each: 1/enter outside on average, length inside.
func rejectShare(line *sim.Station) float64 {
	if line.Runs.Enter <= 0 {
		return line.RejectShare
	}
	inside := line.Runs.Enter * line.Runs.Length
	return (line.RejectShare + line.Runs.Share*inside) / (1 + inside)
}

// blinded says that there are cycles that the camera does not look at, such as scrap after a stop: if the
// worst of a run are among them the station stops less often than derived. A camera whose rejects leave later
// looks at all.
func blinded(line *sim.Station) bool {
	return line.RejectsAfter == 0 && (line.LostPerStop > 0 || len(line.AfterStop)+len(line.AfterStandstill) > 0 ||
		slices.ContainsFunc(line.Materials, func(m sim.Material) bool { return m.SpliceScrap > 0 || m.MisPicks.Share > 0 }))
}

// longestRow is the number of cycles from which a row is so seldom that it changes no figure, whatever the rejects.
const longestRow = 1_000_000

// rowStops is the share of cycles after which a station stops because so many in a row had
// a reject found. For independent rejects that is q^k (1-q)/(1-q^k), q the share of cycles with
// one (mean time to a run of k successes: Feller 1968, from memory). With runs it is exact by the
// chain of (state, row): what is in row j is what was in row 0, j cycles with a reject later.
func rowStops(line *sim.Station) float64 {
	k := line.RejectStop.After
	if k <= 0 || k > longestRow {
		return 0
	}
	gives := float64(max(line.Gives, 1))
	found := [2]float64{1 - math.Pow(1-line.RejectShare, gives), 1 - math.Pow(1-line.Runs.Share, gives)}
	enter, leave := 0.0, 1.0
	if line.Runs.Enter > 0 {
		enter, leave = line.Runs.Enter, 1/line.Runs.Length
	}
	// step is what becomes, within one cycle with a reject, of being outside and inside a run.
	step := [2][2]float64{
		{found[0] * (1 - enter), found[0] * enter},
		{found[1] * leave, found[1] * (1 - leave)},
	}
	return rowRate(step, found, enter/(enter+leave), k)
}

// rowRate solves for what is in row 0: the sum over all rows is the share of time in each state.
func rowRate(step [2][2]float64, found [2]float64, inside float64, k int64) float64 {
	power, sum := [2][2]float64{{1, 0}, {0, 1}}, [2][2]float64{}
	for range k - 1 {
		sum = plus(sum, power)
		power = times(power, step)
		if power == ([2][2]float64{}) {
			return 0
		}
	}
	sum = plus(sum, power)
	determinant := sum[0][0]*sum[1][1] - sum[0][1]*sum[1][0]
	first := ((1-inside)*sum[1][1] - inside*sum[1][0]) / determinant
	second := (inside*sum[0][0] - (1-inside)*sum[0][1]) / determinant
	last := [2]float64{first*power[0][0] + second*power[1][0], first*power[0][1] + second*power[1][1]}
	return max(0, last[0]*found[0]+last[1]*found[1])
}

func plus(a, b [2][2]float64) [2][2]float64 {
	return [2][2]float64{{a[0][0] + b[0][0], a[0][1] + b[0][1]}, {a[1][0] + b[1][0], a[1][1] + b[1][1]}}
}

func times(a, b [2][2]float64) (c [2][2]float64) {
	for i := range 2 {
		for j := range 2 {
			c[i][j] = a[i][0]*b[0][j] + a[i][1]*b[1][j]
		}
	}
	return c
}
