package stoplog

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Fit is a law fitted to a log by maximum likelihood.
type Fit struct {
	Law Law
	// LogLikelihood is its value at the maximum, AIC is 2 · parameters − 2 · LogLikelihood: of
	// several laws of one log the one with the smallest AIC describes it best for its size.
	LogLikelihood, AIC float64
	// Ended and Open are the numbers of observations.
	Ended, Open int
}

// ErrNoMaximum says that the likelihood has no maximum within reason: it goes on rising
// while a parameter runs away. It happens when most of a law lies below the threshold.
var ErrNoMaximum = errors.New("the values do not determine this law: its likelihood has no maximum")

// FitLaw fits one family to a log. Everything that is wrong with the log is said at
// once; errors.Is(err, ErrNoMaximum) tells when the log is fine and the family is not.
func FitLaw(kind Kind, log []Observation) (Fit, error) {
	if err := check(log); err != nil {
		return Fit{}, err
	}
	if kind != ExponentialKind && !different(log) {
		return Fit{}, errors.New("all values that ended are equal: a law with two parameters cannot be fitted; use a fixed duration")
	}
	law, err := mostLikely(kind, log)
	if err != nil {
		return Fit{}, err
	}
	fit := Fit{Law: law, LogLikelihood: LogLikelihood(law, log), Ended: ended(log)}
	if math.IsNaN(fit.LogLikelihood) || math.IsInf(fit.LogLikelihood, 0) {
		return Fit{}, ErrNoMaximum // a parameter has run away to 0, beyond what numbers hold
	}
	fit.Open = len(log) - fit.Ended
	fit.AIC = 2*float64(len(law.Parameters())) - 2*fit.LogLikelihood
	return fit, nil
}

// FitAll fits every family and lists the fits by AIC, best first. Families that the
// log does not determine are left out; err is set if none is left.
func FitAll(log []Observation) ([]Fit, error) {
	var fits []Fit
	var failed []error
	for _, kind := range Kinds {
		fit, err := FitLaw(kind, log)
		if err != nil {
			failed = append(failed, fmt.Errorf("%s: %w", kind, err))
			continue
		}
		fits = append(fits, fit)
	}
	if len(fits) == 0 {
		return nil, errors.Join(failed...)
	}
	slices.SortStableFunc(fits, func(a, b Fit) int {
		if a.AIC < b.AIC {
			return -1
		}
		if a.AIC > b.AIC {
			return 1
		}
		return 0
	})
	return fits, nil
}

// mostLikely finds the maximum: in closed form, by one equation, or in two dimensions.
func mostLikely(kind Kind, log []Observation) (Law, error) {
	switch kind {
	case ExponentialKind:
		return likelyExponential(log)
	case WeibullKind:
		return likelyWeibull(log)
	case GammaKind:
		if plain(log) {
			return plainGamma(log)
		}
		return climb(gammaAt, gammaStart(log), log)
	case LognormalKind:
		if plain(log) {
			l := plainLognormal(log)
			if !(l.Sigma > 0) {
				return nil, ErrNoMaximum
			}
			return l, nil
		}
		return climb(lognormalAt, lognormalStart(log), log)
	}
	return nil, fmt.Errorf("there is no law %q to fit; there are %v", kind, Kinds)
}
