package stoplog

import (
	"slices"
	"strings"
	"testing"
)

func TestGoodnessRefuses(t *testing.T) {
	law := Weibull{1.5, 100}
	log := Complete([]float64{30, 60, 90, 200})
	if _, err := GoodnessOf(law, log, 99); err == nil || !strings.Contains(err.Error(), "at least 100") {
		t.Errorf("99 draws gave %v", err)
	}
	open := append(slices.Clone(log), Observation{Value: 50, Open: true})
	if _, err := GoodnessOf(law, open, 200); err == nil || !strings.Contains(err.Error(), "1 of 5 observations are open") {
		t.Errorf("an open observation gave %v", err)
	}
	if _, err := GoodnessOf(law, Complete([]float64{-1}), 200); err == nil {
		t.Error("a negative value was tested")
	}
	// One value cannot be fitted by two parameters, however often it is drawn.
	if _, err := GoodnessOf(law, log[:1], 200); err == nil || !strings.Contains(err.Error(), "200 of 200") {
		t.Errorf("one value gave %v", err)
	}
	// The same log, the same bytes.
	a, err := GoodnessOf(law, log, 200)
	b, _ := GoodnessOf(law, log, 200)
	if err != nil || a != b {
		t.Errorf("%+v, then %+v, %v", a, b, err)
	}
}

// A threshold on all values: the test is of the law above it. Logs drawn so that
// they lie exactly like the law have small distances; those of another law large ones.
func TestGoodnessAboveThreshold(t *testing.T) {
	exact := make([]Observation, 60)
	for i := range exact {
		exact[i] = Observation{Value: quantileAbove(Weibull{1.5, 100}, (float64(i)+0.5)/60, 40), Above: 40}
	}
	fit, err := FitLaw(WeibullKind, exact)
	if err != nil {
		t.Fatal(err)
	}
	g, err := GoodnessOf(fit.Law, exact, 400)
	if err != nil || g.PAndersonDarling < 0.95 || g.KolmogorovSmirnov > 1.0/60 {
		t.Errorf("%+v: %+v, %v", fit.Law, g, err)
	}
	for i := range exact {
		exact[i].Value = []float64{45, 300}[i%2] + float64(i)/10 // two heaps
	}
	fit, _ = FitLaw(ExponentialKind, exact)
	if g, err = GoodnessOf(fit.Law, exact, 400); err != nil || g.PAndersonDarling > 0.01 || g.PKolmogorovSmirnov > 0.01 {
		t.Errorf("two heaps, %+v: %+v, %v", fit.Law, g, err)
	}
}
