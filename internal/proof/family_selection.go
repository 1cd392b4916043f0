package proof

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"tuckline/internal/estimate"
)

// selections: constants and a published run of the procedure that chooses the best.
func selections(e *entry) {
	if !strings.HasPrefix(e.name, "KN") {
		e.leaveAll("constants of two-stage procedures; selection uses the one of Kim and Nelson")
		return
	}
	k, first, confidence := int(e.number("k")), int(e.number("n0")), 1-e.number("alpha")
	c := e.exactly(fmt.Sprintf("%s, %d alternatives, first stage %d; %s", e.given["procedure"], k, first, e.given["extra"]), ownFunction)
	if e.name == "KNRUN-1" {
		e.selectionRun(c, k, first, confidence)
		return
	}
	eta, h2 := estimate.KimNelson(k, confidence, first)
	e.sure(c, "eta", 0, plain(eta))
	e.sure(c, "h2", 0, plain(h2))
}

// eliminations compares who was given up and after how many replications, written as INDEX:REPLICATIONS.
func (e *entry) eliminations(c *Case, own []estimate.Elimination) {
	i := slices.IndexFunc(e.values, func(v *value) bool { return v.quantity == "eliminations (index:r)" })
	v := e.values[i]
	e.use(v)
	for k, text := range strings.Fields(v.text) {
		index, after, _ := strings.Cut(text, ":")
		got := estimate.Elimination{Alternative: -1}
		if k < len(own) {
			got = own[k]
		}
		for _, one := range []struct {
			what, want string
			own        int
		}{{"given up", index, got.Alternative}, {"given up after", after, got.Replications}} {
			c.figures = append(c.figures, &figure{
				quantity: fmt.Sprintf("%s, number %d", one.what, k+1), source: v.source, known: v.known, kind: sure,
				exact: e.parse(v.quantity, one.want), compute: plain(float64(one.own)),
			})
		}
	}
}

// publishedSeries are the values of the run, by alternative and replication.
func publishedSeries(i, r int) float64 {
	x, step := float64(i), float64(r)
	base, swing := []float64{10, 10.6, 12, 11.8}[i], []float64{1.1, 0.9, 1.3, 1.0}[i]
	return base + swing*math.Sin(1.7*step+2.1*x) + 0.4*math.Cos(0.9*step*(x+1))
}

func (e *entry) selectionRun(c *Case, k, first int, confidence float64) {
	const series = "delta=0.5; x_i(r)=b_i+a_i sin(1.7 r+2.1 i)+0.4 cos(0.9 r (i+1)), i=0..3, r=0,1,..; b=10,10.6,12,11.8; a=1.1,0.9,1.3,1.0"
	if e.given["extra"] != series {
		e.fail(errors.New("the series is another"))
		return
	}
	s, err := estimate.NewShortSelection(k, 0.5, confidence, first)
	if err != nil {
		e.fail(err)
		return
	}
	most := 0
	for r := 0; !s.Done(); r++ {
		values := make([]float64, k)
		for _, i := range s.Survivors() {
			values[i] = publishedSeries(i, r)
		}
		e.fail(s.Add(values))
		most = max(most, s.Most())
	}
	v, _ := s.Verdict()
	e.sure(c, "selected_index", 0, plain(float64(v.Best)))
	e.sure(c, "observations_per_survivor_at_stop", 0, plain(float64(v.Replications)))
	e.sure(c, "S2_0_2", 0, plain(s.FirstStageVariance(0, 2)))
	e.sure(c, "max_N", 0, plain(float64(most-1)))
	e.eliminations(c, v.Eliminations)
}
