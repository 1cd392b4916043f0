package draw

import "fmt"

// String describes the law for a table, without a unit: "lognormal, mean 90, cv 0.8".
// Mean and cv are those that were entered, before "plus".
func (l Law) String() string {
	if l.IsZero() {
		return "not given"
	}
	text := l.describe()
	if l.shift != 0 && l.kind != fixed {
		text += fmt.Sprintf(", plus %.6g", l.shift)
	}
	return text
}

func (l Law) describe() string {
	at := func(v float64) string { return fmt.Sprintf("%.6g", l.scale*v) }
	byMean := l.Kind() + ", mean " + at(l.mean)
	switch l.kind {
	case fixed:
		return fmt.Sprintf("fixed, %.6g", l.Mean())
	case exponential:
		return byMean
	case erlang:
		return fmt.Sprintf("%s, k %.6g", byMean, l.a)
	case uniformLaw:
		return "uniform, " + at(l.a) + " to " + at(l.b)
	case triangular:
		return "triangular, low " + at(l.a) + ", likely " + at(l.b) + ", high " + at(l.c)
	case geometric:
		return byMean + ", step " + at(l.a)
	case empirical:
		return fmt.Sprintf("empirical, %d values, mean %s, cv %.4g", len(l.values), at(l.mean), l.sd/l.mean)
	case mixture:
		return fmt.Sprintf("mixture of %d laws, mean %s, cv %.4g", len(l.parts), at(l.mean), l.sd/l.mean)
	}
	return fmt.Sprintf("%s, cv %.6g", byMean, l.sd/l.mean)
}
