package plan

import "math"

// Ages is a distribution of times: exact sum and count, and classes of equal ratio.
type Ages struct {
	Count, Sum int64
	// Classes count by class; AgeClass tells which.
	Classes []int64
}

// ageStep is the ratio of the limits of two classes: 1 %.
const ageStep = 1.01

// AgeClass is the class of an age: 0 up to a millisecond, then a class a per cent.
func AgeClass(age Micros) int {
	if age <= 1000 {
		return 0
	}
	return int(math.Ceil(math.Log(float64(age)/1000) / math.Log(ageStep)))
}

// AgeLimit is the upper limit of a class, in microseconds.
func AgeLimit(class int) float64 { return 1000 * math.Pow(ageStep, float64(class)) }

// Add counts n pieces of an age.
func (a *Ages) Add(age Micros, n int64) {
	class := AgeClass(age)
	for len(a.Classes) <= class {
		a.Classes = append(a.Classes, 0)
	}
	a.Classes[class] += n
	a.Count += n
	a.Sum += n * int64(age)
}
