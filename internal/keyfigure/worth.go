package keyfigure

import "slices"

// worth is what pieces in a joint are worth at the count.
type worth struct {
	known bool
	// perPiece is answer pieces per piece, by takes and gives alone.
	perPiece float64
	// yield is counted pieces per nominal answer piece: rejects from here on.
	yield float64
}

// spread carries the worth of a piece from the count through the whole line and
// writes it into the stations. Of pieces that reach no count nothing is left there.
func (f *flow) spread(stations []Station, c *counting) {
	joints := make([]worth, len(f.joints))
	for i := range stations {
		stations[i].Yield = 0
	}
	for _, i := range c.stations {
		joints[f.out[i]] = worth{known: true, perPiece: 1, yield: 1}
	}
	way := f.stationWay()
	for _, i := range slices.Backward(way) {
		if c.to[i] {
			f.spreadBack(stations, joints, c.to, i)
		}
	}
	f.spreadUnits(stations, joints)
	for _, i := range way {
		if c.from[i] && !c.counted(i) {
			f.spreadOn(stations, joints, c, i)
		}
	}
	for _, i := range slices.Backward(way) {
		if c.beside[i] {
			joints[f.out[i]].known = false // known by takes and gives alone
			f.spreadBack(stations, joints, union(c.beside, c.from), i)
		}
	}
}

// spreadMost writes the yields with the least that is lost.
func (f *flow) spreadMost(stations []Station, c *counting) {
	most := slices.Clone(stations)
	for i := range most {
		most[i].GoodShare = most[i].mostGood
	}
	f.spread(most, c)
	for i := range most {
		stations[i].mostYield = most[i].Yield
	}
}

// spreadBack values a station by where its pieces go. What a joint is worth is the mean of
// all the ways from it that lead to a count, or to what was counted.
func (f *flow) spreadBack(stations []Station, joints []worth, there []bool, i int) {
	out := &joints[f.out[i]]
	if !out.known {
		takers := f.joints[f.out[i]].takers
		mean := func(value func(*Station) float64) float64 {
			return meanOver(takers, func(k int) float64 { return f.portionTaken(stations, k, f.out[i]) }, func(k int) (float64, bool) {
				s := &stations[k]
				return s.perPieceTaken(f.takesFrom(k, f.out[i])) * value(s), there[k]
			})
		}
		perPiece := mean(func(*Station) float64 { return 1 })
		*out = worth{known: true, perPiece: perPiece, yield: ratio(mean(func(s *Station) float64 { return s.Yield }), perPiece)}
	}
	s := &stations[i]
	s.PerPiece, s.Yield = out.perPiece, s.GoodShare*out.yield
}

// spreadUnits values pieces beside and behind the count by takes and gives alone.
func (f *flow) spreadUnits(stations []Station, joints []worth) {
	for again := true; again; {
		again = false
		for i := range stations {
			again = f.spreadUnit(&stations[i], joints, i) || again
		}
	}
}

// spreadUnit values a station by a place beside it of which the worth is known, and then all
// places beside it. It reports whether a place was not known before.
func (f *flow) spreadUnit(s *Station, joints []worth, i int) (news bool) {
	if s.PerPiece == 0 {
		s.PerPiece = joints[f.out[i]].perPiece
	}
	for _, in := range f.ins[i] {
		if s.PerPiece == 0 {
			s.PerPiece = joints[in.joint].perPiece * in.takes / float64(s.Gives)
		}
	}
	if s.PerPiece == 0 {
		return false
	}
	learn := func(joint int, perPiece float64) {
		if joints[joint].perPiece == 0 {
			joints[joint] = worth{known: true, perPiece: perPiece}
			news = true
		}
	}
	learn(f.out[i], s.PerPiece)
	for _, in := range f.ins[i] {
		learn(in.joint, s.perPieceTaken(in.takes))
	}
	return news
}

// spreadOn values a station behind the count: its pieces are those that were
// counted, less what is rejected since.
func (f *flow) spreadOn(stations []Station, joints []worth, c *counting, i int) {
	for _, in := range f.ins[i] {
		if stations[i].Yield == 0 {
			stations[i].Yield = joints[in.joint].yield
		}
	}
	mean := func(value func(int) float64) float64 {
		return meanOver(f.joints[f.out[i]].feeders, given(stations), func(k int) (float64, bool) {
			return value(k), c.from[k]
		})
	}
	counted := mean(func(k int) float64 {
		if c.counted(k) {
			return stations[k].GoodShare
		}
		return stations[k].Yield
	})
	joints[f.out[i]].yield = ratio(counted, mean(func(k int) float64 { return stations[k].GoodShare }))
}
