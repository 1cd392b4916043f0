package keyfigure

// stream is how many cycles every station makes for one counted piece: where
// the flow divides, and where it comes together, it does so in proportion to set speeds.
type stream struct {
	*flow
	stations []Station
	good     func(*Station) float64
	// cycles are of the stations; pieces go through each joint, those seen so far.
	cycles, pieces []float64
	seen           []bool
}

// findCycles writes the cycles for each counted piece and the share of the flow into the stations.
func (f *flow) findCycles(stations []Station, c *counting) {
	real := f.cyclesPerPiece(stations, c, func(s *Station) float64 { return s.GoodShare })
	nominal := f.cyclesPerPiece(stations, c, func(*Station) float64 { return 1 })
	for i := range stations {
		s := &stations[i]
		s.cycles = real[i]
		s.Flow = nominal[i] * float64(s.Gives) * s.PerPiece
	}
}

// cyclesPerPiece follows the flow from the counts. Parts of a line that nothing
// joins count in proportion to what each makes at set speed.
func (f *flow) cyclesPerPiece(stations []Station, c *counting, good func(*Station) float64) []float64 {
	m := &stream{
		flow: f, stations: stations, good: good,
		cycles: make([]float64, len(stations)), pieces: make([]float64, len(f.joints)), seen: make([]bool, len(f.joints)),
	}
	var parts [][]int
	var rates []float64
	sum := 0.0
	for _, i := range c.stations {
		if m.seen[f.out[i]] {
			continue
		}
		part := m.follow(f.out[i])
		m.onward(part)
		m.perCounted(part, c)
		parts, rates = append(parts, part), append(rates, m.tied(part))
		sum += rates[len(rates)-1]
	}
	for k, part := range parts {
		m.scale(part, ratio(rates[k], sum))
	}
	return m.cycles
}

// follow spreads a flow of one piece in a joint to all that is joined with it,
// and returns these stations.
func (m *stream) follow(first int) (part []int) {
	reached := make([]bool, len(m.stations))
	add := func(i int, cycles float64) {
		if !reached[i] {
			reached[i], m.cycles[i] = true, cycles
			part = append(part, i)
		}
	}
	m.pieces[first], m.seen[first] = 1, true
	for queue := []int{first}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		pieces, feeders, takers := m.pieces[at], m.joints[at].feeders, m.joints[at].takers
		for _, i := range feeders {
			add(i, ratio(pieces*m.portionGiven(i), float64(m.stations[i].Gives)*m.meanGood(feeders)))
			if in := m.in[i]; in >= 0 && !m.seen[in] {
				m.pieces[in], m.seen[in] = ratio(m.cycles[i]*float64(m.stations[i].Takes), m.portionTaken(i)), true
				queue = append(queue, in)
			}
		}
		for _, i := range takers {
			add(i, pieces*m.portionTaken(i)/float64(m.stations[i].Takes))
			if out := m.out[i]; !m.seen[out] {
				given := m.cycles[i] * float64(m.stations[i].Gives) * m.meanGood(m.joints[out].feeders)
				m.pieces[out], m.seen[out] = ratio(given, m.portionGiven(i)), true
				queue = append(queue, out)
			}
		}
	}
	return part
}

// onward follows the flow once more, from its sources in the order of the
// product: branches that lose unlike shares then carry what is left in each.
func (m *stream) onward(part []int) {
	inside := make([]bool, len(m.stations))
	for _, i := range part {
		inside[i] = true
	}
	for _, i := range m.stationWay() {
		if !inside[i] || m.in[i] < 0 {
			continue
		}
		pieces := 0.0
		for _, k := range m.joints[m.in[i]].feeders {
			pieces += m.goodPieces(k)
		}
		m.cycles[i] = pieces * m.portionTaken(i) / float64(m.stations[i].Takes)
	}
}

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
	return meanOver(m.stations, feeders, (*Station).givesPerMinute, func(k int) (float64, bool) { return m.good(&m.stations[k]), true })
}

// portionGiven is the part of a station in what its joint gets, portionTaken in what is taken from its joint.
func (m *stream) portionGiven(i int) float64 {
	return portion(m.stations, m.joints[m.out[i]].feeders, i, (*Station).givesPerMinute)
}

func (m *stream) portionTaken(i int) float64 {
	return portion(m.stations, m.joints[m.in[i]].takers, i, (*Station).takesPerMinute)
}
