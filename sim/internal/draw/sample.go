package draw

import "math"

// Longest is the longest duration that Micros gives: 2^62 µs, 146,000 years.
// It leaves room to add it to any clock of a replication.
const Longest = int64(1) << 62

// Micros draws a value from the law with one number of the stream, rounds it to
// a whole number and gives at least 1: a duration in microseconds, or an age in
// other whole units. A fixed law leaves the stream as it is.
func Micros(law *Law, s *Stream) int64 {
	if law.kind == fixed {
		return whole(law.Quantile(0.5))
	}
	return whole(law.Quantile(s.Uniform()))
}

func whole(value float64) int64 {
	if value >= float64(Longest) {
		return Longest
	}
	return max(int64(math.Round(value)), 1)
}

// Gap is the number of pieces accepted before the next rejected one when each is
// rejected with probability share, independently: floor(ln u / ln(1 − share)),
// the inverse of the geometric law. A share of 0 gives math.MaxInt64 (never), a
// share of 1 gives 0 (always).
func Gap(u, share float64) int64 {
	if !(share > 0) {
		return math.MaxInt64
	}
	gap := math.Floor(math.Log(u) / math.Log1p(-share))
	if gap >= math.MaxInt64 {
		return math.MaxInt64
	}
	return int64(gap)
}
