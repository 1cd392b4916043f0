package report

import (
	"math"
	"strconv"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/result"
)

// thin parts thousands and stands before a unit; it does not break a line.
const thin = quantity.Thin

// number is an estimate as people read it: the digits follow the interval.
type number struct {
	Mean, Half, Low, High string
	// Known is false where no replication gave a value, Alone true where one did, without an interval.
	Known, Alone bool
}

// String is "3 742 ± 31".
func (n number) String() string {
	if !n.Known {
		return "–"
	}
	if n.Alone {
		return say("no.interval", facts{"Mean": n.Mean})
	}
	return n.Mean + thin + "±" + thin + n.Half
}

// Range is "3 711 to 3 773"; the word is a word of the report.
func (n number) Range() string {
	if !n.Known {
		return "–"
	}
	return say("range", facts{"Low": n.Low, "High": n.High})
}

// numberOf shows an estimate times scale, with two significant digits of the half-width.
func numberOf(e result.Estimate, scale float64) number {
	return atPlace(e, scale, placeOf(halfWidth(e)*scale, e.Mean*scale))
}

// atPlace shows an estimate rounded to a power of ten, so that a column agrees.
func atPlace(e result.Estimate, scale float64, place int) number {
	return number{
		Mean: rounded(e.Mean*scale, place), Half: rounded(halfWidth(e)*scale, place),
		Low: rounded(e.Low*scale, place), High: rounded(e.High*scale, place),
		Known: e.N > 0, Alone: e.N == 1,
	}
}

// columnPlace is the power of ten for a column: that of its widest interval.
func columnPlace(column []result.Estimate, scale float64) int {
	half, mean := 0.0, 0.0
	for _, e := range column {
		half = max(half, halfWidth(e)*scale)
		mean = max(mean, math.Abs(e.Mean)*scale)
	}
	return placeOf(half, mean)
}

// placeIn is the power of ten for one estimate of each row.
func placeIn[T any](rows []T, of func(T) result.Estimate, scale float64) int {
	column := make([]result.Estimate, len(rows))
	for i, row := range rows {
		column[i] = of(row)
	}
	return columnPlace(column, scale)
}

// sharesPlace is the power of ten for a table of shares in percent: that of the widest interval, but no more than a
// tenth of a percent, which is also that of a table without any interval.
func sharesPlace(shares []result.Estimate) int {
	for _, e := range shares {
		if halfWidth(e) > 0 {
			return max(columnPlace(shares, 100), -1)
		}
	}
	return -1
}

// halfWidth is that of the interval; what is left by the sums of floats where all replications are alike is none.
func halfWidth(e result.Estimate) float64 {
	half := (e.High - e.Low) / 2
	if half < 1e-12*math.Abs(e.Mean) {
		return 0
	}
	return half
}

// placeOf is the power of ten of the second significant digit of the
// half-width. Without an interval it is that of the third digit of the value.
func placeOf(half, mean float64) int {
	if half > 0 && !math.IsInf(half, 0) {
		place := exponent(half) - 1
		return exponent(math.Round(half/math.Pow10(place))*math.Pow10(place)) - 1
	}
	if mean == 0 || math.IsNaN(mean) || math.IsInf(mean, 0) {
		return 0
	}
	return min(exponent(math.Abs(mean))-2, 0)
}

func exponent(v float64) int { return int(math.Floor(math.Log10(v) + 1e-9)) }

// rounded writes v rounded to a power of ten, with thin spaces between thousands.
func rounded(v float64, place int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	if place > 0 {
		unit := math.Pow10(place)
		v = math.Round(v/unit) * unit
	}
	return quantity.Grouped(strconv.FormatFloat(v, 'f', max(-place, 0), 64))
}

// whole writes a count.
func whole(v float64) string { return rounded(v, 0) }

// short writes a given value with no more digits than it has.
func short(v float64) string {
	text := strconv.FormatFloat(v, 'f', 6, 64)
	return quantity.Grouped(strings.TrimRight(strings.TrimRight(text, "0"), "."))
}
