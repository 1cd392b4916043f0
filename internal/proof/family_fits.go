package proof

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tuckline/internal/stoplog"
)

// fits: laws fitted to published data by maximum likelihood.
func fits(e *entry) {
	log := stoplog.Complete(e.list(e.given["data"]))
	if e.given["censoring"] == "10 units right-censored at 500" {
		log = slices.Concat(log, slices.Repeat([]stoplog.Observation{{Value: 500, Open: true}}, 10))
	}
	fit, err := stoplog.FitLaw(stoplog.Kind(strings.ToLower(e.given["distribution"])), log)
	if err != nil {
		e.fail(err)
		return
	}
	c := e.exactly(fmt.Sprintf("%s law of %d values; open: %s", e.given["distribution"], len(log), e.given["censoring"]), ownFunction)
	e.sure(c, "loglik", 0, plain(fit.LogLikelihood))
	e.sure(c, "AIC", 0, plain(fit.AIC))
	e.sure(c, "mean", 0, plain(fit.Law.Mean()))
	e.sure(c, "sd", 0, plain(fit.Law.SD()))
	for _, p := range fit.Law.Parameters() {
		e.sure(c, p.Name, 0, plain(p.Value))
		e.sure(c, p.Name+"_mle", 0, plain(p.Value))
	}
}

// goodness: distances of data from a law, their chances, and tables of critical values.
func goodness(e *entry) {
	switch {
	case strings.Contains(e.name, "-KNOWN-"):
		e.knownTables()
	case strings.HasPrefix(e.name, "GOF-"):
		e.fitOfLog()
	default:
		e.drawnTables()
	}
}

func (e *entry) knownTables() {
	below := stoplog.KolmogorovKnown
	if e.given["test"] == "Anderson-Darling" {
		below = stoplog.AndersonDarlingKnown
	}
	c := e.exactly(e.given["test"]+", all parameters known, "+e.given["modification"], ownFunction)
	for _, v := range e.values {
		e.sure(c, v.quantity, 0, plain(stoplog.CriticalKnown(below, e.alpha(v.quantity))))
	}
}

func (e *entry) alpha(quantity string) float64 {
	return e.parse("alpha", strings.TrimPrefix(quantity, "critical value alpha="))
}

// goodnessDraws leave a standard error of 0.005 at most in a chance, a quarter of the tolerance.
const goodnessDraws = 10_000

func (e *entry) fitOfLog() {
	log := stoplog.Complete(e.list(e.given["n_or_data"]))
	c := e.exactly(fmt.Sprintf("%s law fitted to %d values", e.given["distribution"], len(log)), "The function of the program; chances by 10,000 drawn logs with a fixed seed, the tolerance is that of the source.")
	of := func(read func(stoplog.Goodness) float64) sureValue {
		return func() (float64, error) {
			fit, err := stoplog.FitLaw(stoplog.Kind(strings.ToLower(e.given["distribution"])), log)
			if err != nil {
				return 0, err
			}
			g, err := stoplog.GoodnessOf(fit.Law, log, goodnessDraws)
			return read(g), err
		}
	}
	e.sure(c, "A2", 0, of(func(g stoplog.Goodness) float64 { return g.AndersonDarling }))
	e.sure(c, "D", 0, of(func(g stoplog.Goodness) float64 { return g.KolmogorovSmirnov }))
	e.sure(c, "bootstrap_p_A2", 0, of(func(g stoplog.Goodness) float64 { return g.PAndersonDarling }))
	e.sure(c, "bootstrap_p_D", 0, of(func(g stoplog.Goodness) float64 { return g.PKolmogorovSmirnov }))
	for _, f := range c.figures {
		if strings.HasPrefix(f.quantity, "bootstrap") {
			f.says, f.drawn = agrees, true
		}
	}
}

// tableDraws keep the chance of the largest table value within about 0.016.
const tableDraws = 100_000

// drawnTables draws logs of 100 values, as the tables do. A normal law is the lognormal one seen
// through the logarithm: the ranks are the same.
func (e *entry) drawnTables() {
	law := map[string]stoplog.Law{"exponential": stoplog.Exponential{Average: 1}, "Weibull": stoplog.Weibull{Shape: 1, Scale: 1}, "normal": stoplog.Lognormal{Mu: 0, Sigma: 1}}[e.given["distribution"]]
	modified := map[string]func(stoplog.Distances) float64{
		"(1+0.6/n) A2":                    func(d stoplog.Distances) float64 { return (1 + 0.6/100) * d.AndersonDarling },
		"(1+0.2/sqrt n) A2":               func(d stoplog.Distances) float64 { return (1 + 0.2/10) * d.AndersonDarling },
		"(sqrt n - 0.01 + 0.85/sqrt n) D": func(d stoplog.Distances) float64 { return (10 - 0.01 + 0.085) * d.KolmogorovSmirnov },
	}[e.given["modification"]]
	c := e.exactly(fmt.Sprintf("%s of %s laws that are fitted, %s", e.given["test"], e.given["distribution"], e.given["modification"]), "Quantiles of 100,000 drawn logs of 100 values with a fixed seed; the tolerance is that of the source.")
	c.work = 2 * 100 * tableDraws // a value of a drawn and fitted log takes about as long as two cycles
	var sorted []float64
	draw := func() error {
		if sorted != nil {
			return nil
		}
		null, err := stoplog.NullDistances(law, make([]stoplog.Observation, 100), tableDraws)
		sorted = each(null, modified)
		slices.Sort(sorted)
		return err
	}
	for _, v := range e.values {
		e.sure(c, v.quantity, 0, func() (float64, error) {
			if err := draw(); err != nil {
				return 0, err
			}
			return sorted[int(math.Ceil((1-e.alpha(v.quantity))*float64(len(sorted))))-1], nil
		})
	}
	for _, f := range c.figures {
		f.says, f.drawn = agrees, true
	}
}
