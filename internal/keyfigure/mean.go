package keyfigure

// meanOver is the mean of a value over those stations side by side that have
// it, by the flow that they take or give.
func meanOver(stations []Station, side []int, rate func(*Station) float64, value func(int) (float64, bool)) float64 {
	sum, weight := 0.0, 0.0
	for _, i := range side {
		if v, has := value(i); has {
			sum += v * rate(&stations[i])
			weight += rate(&stations[i])
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
func portion(stations []Station, side []int, one int, rate func(*Station) float64) float64 {
	sum := 0.0
	for _, i := range side {
		sum += rate(&stations[i])
	}
	return ratio(rate(&stations[one]), sum)
}

func (s *Station) givesPerMinute() float64 { return s.Set.Cycles * float64(s.Gives) }
func (s *Station) takesPerMinute() float64 { return s.Set.Cycles * float64(s.Takes) }

// perPieceTaken is the number of answer pieces that one piece taken is worth.
func (s *Station) perPieceTaken() float64 { return s.PerPiece * float64(s.Gives) / float64(s.Takes) }
