package keyfigure

import "slices"

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
			add(i, ratio(pieces*m.portionGiven(m.stations, i), float64(m.stations[i].Gives)*m.meanGood(feeders)))
			queue = m.enterAll(i, queue)
		}
		for _, i := range takers {
			add(i, ratio(pieces*m.portionTaken(m.stations, i, at), m.takesFrom(i, at)))
			queue = m.enterAll(i, queue)
			if out := m.out[i]; !m.seen[out] {
				m.pieces[out], m.seen[out] = ratio(m.goodOn(i), m.portionGiven(m.stations, i)), true
				queue = append(queue, out)
			}
		}
	}
	return part
}

// enterAll adds the joints that a station takes from to those that are still to be followed.
func (m *stream) enterAll(i int, queue []int) []int {
	for _, in := range m.ins[i] {
		if at := in.joint; !m.seen[at] {
			m.pieces[at], m.seen[at] = ratio(m.cycles[i]*m.takesFrom(i, at), m.portionTaken(m.stations, i, at)), true
			queue = append(queue, at)
		}
	}
	return queue
}

// goodOn is what a station gives, less the rejects of all that give into the same joint.
func (m *stream) goodOn(i int) float64 {
	return m.cycles[i] * float64(m.stations[i].Gives) * m.meanGood(m.joints[m.out[i]].feeders)
}

// onward follows the flow once more, from its sources in the order of the
// product: branches that lose unlike shares then carry what is left in each.
func (m *stream) onward(part []int) {
	inside := make([]bool, len(m.stations))
	for _, i := range part {
		inside[i] = true
	}
	way, aside := m.stationWay(), m.aside()
	for _, i := range way {
		at := m.in[i]
		if !inside[i] || at < 0 || aside[i] {
			continue
		}
		pieces := 0.0
		for _, k := range m.joints[at].feeders {
			pieces += m.goodPieces(k)
		}
		m.cycles[i] = ratio(pieces*m.portionTaken(m.stations, i, at), m.takesFrom(i, at))
	}
	for _, i := range slices.Backward(way) {
		if inside[i] && aside[i] {
			m.asDemanded(i)
		}
	}
}

// asDemanded lets a station make its part of what is taken behind it.
func (m *stream) asDemanded(i int) {
	at, pieces := m.out[i], 0.0
	for _, k := range m.joints[at].takers {
		pieces += m.cycles[k] * m.takesFrom(k, at)
	}
	m.cycles[i] = ratio(pieces*m.portionGiven(m.stations, i), float64(m.stations[i].Gives)*m.meanGood(m.joints[at].feeders))
}
