package draw

import "math"

// Law is the law of a random value that is never negative. It is a value and is
// not changed after it was made; the zero Law means "not given". Its unit is
// that of the numbers it was made from. Laws are made by Fixed, Exponential …
type Law struct {
	kind kind
	// a, b and c are what the kind computes with; see the constructors.
	a, b, c float64
	// mean and sd are those of the law before scale and shift.
	mean, sd float64
	// A value is scale × value of the kind + shift.
	scale, shift float64
	// upTo are the cumulative shares of values or parts, the last one 1.
	upTo   []float64
	values []float64
	parts  []Law
}

type kind uint8

const (
	notGiven kind = iota
	fixed
	exponential
	erlang
	gamma
	lognormal
	weibull
	normal
	uniformLaw
	triangular
	geometric
	empirical
	mixture
)

// words are the kinds in the words of the scenario format.
var words = [...]string{
	"", "fixed", "exponential", "erlang", "gamma", "lognormal", "weibull", "normal",
	"uniform", "triangular", "geometric", "empirical", "mixture",
}

// Kind is the word of the scenario format for the law, or "" if it is not given.
func (l Law) Kind() string { return words[l.kind] }

// IsZero says that no law was given.
func (l Law) IsZero() bool { return l.kind == notGiven }

// IsFixed says that the law has one value only.
func (l Law) IsFixed() bool { return l.kind == fixed }

// Mean is the mean of the law in its own unit, shift included.
func (l Law) Mean() float64 { return l.scale*l.mean + l.shift }

// CV is the coefficient of variation, standard deviation through mean, shift
// included; 0 for a law whose mean is 0.
func (l Law) CV() float64 {
	if mean := l.Mean(); mean > 0 {
		return l.scale * l.sd / mean
	}
	return 0
}

// Shift adds a constant to every value ("plus"). It must be finite and not negative.
func (l Law) Shift(by float64) Law {
	l.shift += by
	return l
}

// Scale multiplies every value, shift included: a change of unit or of speed.
// It must be finite and greater than 0.
func (l Law) Scale(by float64) Law {
	l.scale *= by
	l.shift *= by
	return l
}

// Quantile is the value that the law stays below with probability u, 0 < u < 1.
// It is finite and never negative. For a mixture it is a value drawn with u: the
// part is chosen by u, and the rest of u, rescaled, draws from the part.
func (l *Law) Quantile(u float64) float64 {
	return l.scale*l.plain(u) + l.shift
}

// plain is Quantile before scale and shift.
func (l *Law) plain(u float64) float64 {
	switch l.kind {
	case fixed:
		return l.a
	case exponential:
		return -l.a * math.Log1p(-u)
	case erlang, gamma:
		return l.b * gammaQuantile(l.a, l.c, u)
	case lognormal:
		return math.Exp(l.a + l.b*normalQuantile(u))
	case weibull:
		return l.a * math.Pow(-math.Log1p(-u), l.b)
	case normal:
		return l.b * cutNormalQuantile(l.a, l.c, u)
	case uniformLaw:
		return l.a + u*(l.b-l.a)
	case triangular:
		return triangularQuantile(l.a, l.b, l.c, u)
	case geometric:
		return l.a * (1 + math.Floor(math.Log1p(-u)/l.b))
	case empirical:
		i, _ := choose(l.upTo, u)
		return l.values[i]
	case mixture:
		i, rest := choose(l.upTo, u)
		return l.parts[i].Quantile(rest)
	}
	return 0
}
