package keyfigure

// meanOver is the mean of a value over those stations side by side that have
// it, by the flow that they take or give.
func meanOver(side []int, rate func(int) float64, value func(int) (float64, bool)) float64 {
	sum, weight := 0.0, 0.0
	for _, i := range side {
		if v, has := value(i); has {
			sum += v * rate(i)
			weight += rate(i)
		}
	}
	return ratio(sum, weight)
}

// ratio is 0 where nothing flows.
func ratio(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return a / b
}

// portion is the part of one of several stations side by side: flow divides in
// proportion to set speeds.
func portion(side []int, one int, rate func(int) float64) float64 {
	sum := 0.0
	for _, i := range side {
		sum += rate(i)
	}
	return ratio(rate(one), sum)
}

// given is the pieces that a station gives a minute at set speed.
func given(stations []Station) func(int) float64 {
	return func(i int) float64 { return stations[i].Set.Cycles * float64(stations[i].Gives) }
}

// perPieceTaken is the number of answer pieces that one piece is worth of which a cycle takes so many.
func (s *Station) perPieceTaken(takes float64) float64 {
	return ratio(s.PerPiece*float64(s.Gives), takes)
}
