package keyfigure

// perCounted makes the cycles those for one counted piece of the part.
func (m *stream) perCounted(part []int, c *counting) {
	counted := 0.0
	for _, i := range part {
		if c.counted(i) {
			counted += m.goodPieces(i)
		}
	}
	m.scale(part, ratio(1, counted))
}

func (m *stream) scale(part []int, by float64) {
	for _, i := range part {
		m.cycles[i] *= by
	}
}

// tied is the rate of a part at the set speed of its slowest station.
func (m *stream) tied(part []int) float64 {
	slowest := 0.0
	for _, i := range part {
		s := &m.stations[i]
		if m.cycles[i] == 0 || s.Set.Cycles <= 0 {
			continue
		}
		if rate := 1 / (s.meanCycle(s.Set) * m.cycles[i]); slowest == 0 || rate < slowest {
			slowest = rate
		}
	}
	return slowest
}

func (m *stream) goodPieces(i int) float64 {
	return m.cycles[i] * float64(m.stations[i].Gives) * m.good(&m.stations[i])
}

func (m *stream) meanGood(feeders []int) float64 {
	return meanOver(feeders, given(m.stations), func(k int) (float64, bool) { return m.good(&m.stations[k]), true })
}
