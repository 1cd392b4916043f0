package keyfigure

// SeriesAvailability is the availability of elements that are all needed and fail
// independently of each other, by the clock: the product (reliability theory, as in
// VDI 3649). It is 1 without elements. Shares lie between 0 and 1, here and below.
func SeriesAvailability(elements []float64) float64 {
	all := 1.0
	for _, e := range elements {
		all *= e
	}
	return all
}

// ParallelAvailability is the availability of elements of which one is enough:
// 1 − Π(1 − e) (reliability theory, as in VDI 3649). It is 0 without elements.
func ParallelAvailability(elements []float64) float64 {
	none := 1.0
	for _, e := range elements {
		none *= 1 - e
	}
	return 1 - none
}

// RigidAvailability is the availability of elements that stand together and fail
// only while they work: 1 / (1 + Σ (1 − e)/e) (Buzacott 1967). It is 0 if an element
// is never available.
func RigidAvailability(elements []float64) float64 {
	sum := 1.0
	for _, e := range elements {
		if e <= 0 {
			return 0
		}
		sum += (1 - e) / e
	}
	return 1 / sum
}
