package sim_test

import (
	"math"
	"testing"

	"tuckline/sim"
)

// chanced is one figure of one station against its exact value.
type chanced struct {
	name    string
	station sim.Station
	exact   float64
	of      func(*sim.StationRecord) float64
}

// over is a ratio of two counts.
func over(a, b int64) float64 { return float64(a) / float64(b) }

// Each within its 99 % interval over 50 replications; a miss is repeated once with nine times as many and a
// second seed.
func TestExactValuesOfParts(t *testing.T) {
	for _, c := range chances() {
		t.Run(c.name, func(t *testing.T) {
			if c.misses(t, c.name, 50) && c.misses(t, c.name+", again", 450) {
				t.Error("outside twice")
			}
		})
	}
}

func (c *chanced) misses(t *testing.T, seed string, n int) bool {
	e := compile(t, sim.Line{Stations: []sim.Station{c.station}}).NewEngine()
	var x []float64
	for r := range n {
		rec := e.Run(sim.Options{Seed: seedOf(seed), Replication: r, WarmUp: 1000 * s, Measure: 20_000 * s})
		x = append(x, c.of(&rec.Stations[0]))
	}
	mean, half := interval(x)
	t.Logf("%.6f ± %.6f, exact %.6f", mean, half, c.exact)
	if half > 0.02*c.exact {
		t.Errorf("half-width %.2g is more than 2 %% of %.6g; run longer", half, c.exact)
	}
	return math.Abs(mean-c.exact) > half
}

func chances() []chanced {
	return []chanced{twoStates(2), inARow(0.3, 3), inARow(0.5, 4), picking(0.3, 100), picking(0.4, 1), forGood(0.4, 2), noReads()}
}

// twoStates: a chain that goes to the disturbed state with e and back with 1/L is in it for a share
// e/(e + 1/L) of the cycles (Feller, An Introduction to Probability Theory and Its Applications, vol. 1,
// XV.7, the chain of two states).
func twoStates(gives int64) chanced {
	st := one("A", "", 1)
	st.Gives = gives
	st.RejectShare, st.Runs = 0.02, sim.RejectRuns{Enter: 0.05, Share: 0.5, Length: 8}
	disturbed := st.Runs.Enter / (st.Runs.Enter + 1/st.Runs.Length)
	return chanced{
		"two states", st, (1-disturbed)*st.RejectShare + disturbed*st.Runs.Share,
		func(r *sim.StationRecord) float64 { return over(r.Rejected, r.Given) },
	}
}

// inARow: with independent rejects of share p the mean number of cycles from one run of k to the next is
// (1 − p^k)/(p^k (1 − p)) (Feller, vol. 1, XIII.7). Its reciprocal is how often the station stops a cycle.
func inARow(p float64, k int64) chanced {
	st := one("A", "", 1)
	st.RejectShare = p
	st.RejectStop = sim.RejectStop{After: k, Lasts: sec(0.001)}
	all := math.Pow(p, float64(k))
	return chanced{
		"in a row", st, all * (1 - p) / (1 - all),
		func(r *sim.StationRecord) float64 { return over(r.Stops[0].Count, r.Cycles) },
	}
}

// picking: tries up to R + 1 are (1 − p^(R+1))/(1 − p) on average, 1/(1 − p) without a limit (by hand: the
// k-th try comes about with p^(k−1)), each a second long and a blank.
func picking(p float64, retries int64) chanced {
	st := one("A", "", 1)
	st.Materials = []sim.Material{blanks(10_000, retries)}
	st.Materials[0].MisPicks.Share = p
	return chanced{
		"tries", st, (1 - math.Pow(p, float64(retries+1))) / (1 - p),
		func(r *sim.StationRecord) float64 { return float64(r.States[sim.Running]) / 1e6 / float64(r.Cycles) },
	}
}

// forGood: a cycle lacks its blank with p^(R+1).
func forGood(p float64, retries int64) chanced {
	c := picking(p, retries)
	c.name, c.exact = "mis-picked", math.Pow(p, float64(retries+1))
	c.of = func(r *sim.StationRecord) float64 { return over(r.MisPicked, r.Given) }
	return c
}

// noReads: a share of what the camera leaves.
func noReads() chanced {
	st := one("A", "", 1)
	st.Gives, st.RejectShare, st.NoReads = 3, 0.2, 0.1
	return chanced{
		"no-reads", st, 0.8 * 0.1,
		func(r *sim.StationRecord) float64 { return over(r.NoReads, r.Given) },
	}
}

// Rejects of a share come in runs or not: what is drawn outside runs stays the same, and the gap that
// is left is kept. With runs that reject nothing, the rejects outside are those without runs, later.
func TestRunsKeepTheGap(t *testing.T) {
	a := alone(1)
	a.Stations[0].RejectShare = 0.1
	plain := compile(t, a).NewEngine().Run(sim.Options{Seed: 4, Measure: 1000*s + 1})
	a.Stations[0].Runs = everyOther
	a.Stations[0].Runs.Share = 0
	runs := compile(t, a).NewEngine().Run(sim.Options{Seed: 4, Measure: 2000*s + 1})
	if p, r := plain.Stations[0].Rejected, runs.Stations[0].Rejected; p == 0 || p != r {
		t.Errorf("%d rejects in 1000 cycles, %d with as many in between", p, r)
	}
}

// Each part has streams of its own: adding one changes no other.
func TestPartsHaveTheirOwnStreams(t *testing.T) {
	st := one("A", "", 1)
	st.Stops = []sim.Stop{{Name: "jam", Every: must(t)(sim.Exponential(20)), Lasts: must(t)(sim.Lognormal(5e6, 1))}}
	st.RejectShare, st.NoReads = 0.1, 0.1
	st.Materials = []sim.Material{{Name: "reel", Amount: 1000, PerCycle: 13, Refill: 1000, PartUsed: true, Lasts: must(t)(sim.Exponential(4e6))}}
	before := recordOf(t, st)[0]
	st.Runs = sim.RejectRuns{Enter: 0.01, Share: 0.5, Length: 5}
	runs := recordOf(t, st)[0]
	if before.Rejected == runs.Rejected || before.Stops[0] != runs.Stops[0] || before.Cycles != runs.Cycles {
		t.Errorf("runs of rejects change more than rejects: %+v and %+v", before, runs)
	}
	st.Runs = sim.RejectRuns{}
	st.Materials[0].MisPicks = sim.MisPicks{Share: 1e-9}
	picks := recordOf(t, st)[0]
	if picks.Rejected != before.Rejected || picks.NoReads != before.NoReads || picks.Stops[0] != before.Stops[0] {
		t.Errorf("picks that hardly ever fail change other parts: %+v and %+v", before, picks)
	}
	st.Materials[0].MisPicks = sim.MisPicks{}
	st.NoReads = 0
	readable := recordOf(t, st)[0]
	if got := before.Rejected - before.NoReads; readable.Rejected != got {
		t.Errorf("%d found by the camera, %d without no-reads", got, readable.Rejected)
	}
}
