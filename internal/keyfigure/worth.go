package keyfigure

import "slices"

// worth is what pieces in a joint are worth at the count, and how much of the
// line's flow passes through.
type worth struct {
	known bool
	// perPiece is answer pieces per piece, by takes and gives alone.
	perPiece float64
	// yield is counted pieces per nominal answer piece: rejects from here on.
	yield float64
	// share is the share of the line's flow.
	share float64
}

// spread carries the worth of a piece from the count through the whole line,
// against the flow and with it, and writes it into the stations. Where several
// stations in a row stand in each branch between a split and a merge, the
// yield before the split is that of the branch met first.
func (f *flow) spread(stations []Station, counted int) {
	if counted < 0 || counted >= len(stations) {
		return
	}
	joints := make([]worth, len(f.joints))
	first := f.out[counted]
	joints[first] = worth{known: true, perPiece: 1, yield: 1, share: 1}
	for queue := []int{first}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		queue = append(queue, f.spreadBack(stations, joints, at)...)
		queue = append(queue, f.spreadOn(stations, joints, at)...)
	}
	f.spreadYield(stations, joints)
}

// spreadYield gives every station the yield of all the flow that it shares
// with those beside it.
func (f *flow) spreadYield(stations []Station, joints []worth) {
	for i := range stations {
		s := &stations[i]
		if in := f.in[i]; in >= 0 {
			s.lineYield = joints[in].yield
			continue
		}
		s.lineYield = meanOver(stations, f.joints[f.out[i]].feeders, (*Station).givesPerMinute, func(k int) (float64, bool) {
			return stations[k].Yield, f.in[k] < 0
		})
	}
}

// spreadBack values the stations that feed a joint, then what they take from.
func (f *flow) spreadBack(stations []Station, joints []worth, at int) (reached []int) {
	feeders := f.joints[at].feeders
	for _, i := range feeders {
		s := &stations[i]
		s.PerPiece = joints[at].perPiece
		s.Yield = joints[at].yield * s.GoodShare
		s.Flow = joints[at].share * portion(stations, feeders, i, (*Station).givesPerMinute)
	}
	for _, i := range feeders {
		in := f.in[i]
		if in < 0 || joints[in].known {
			continue
		}
		s := &stations[i]
		joints[in] = worth{
			known:    true,
			perPiece: s.PerPiece * float64(s.Gives) / float64(s.Takes),
			yield: meanOver(stations, f.joints[in].takers, (*Station).takesPerMinute, func(k int) (float64, bool) {
				return stations[k].Yield, slices.Contains(feeders, k)
			}),
			share: ratio(s.Flow, portion(stations, f.joints[in].takers, i, (*Station).takesPerMinute)),
		}
		reached = append(reached, in)
	}
	return reached
}

// spreadOn values the stations that take from a joint, then what they give into.
func (f *flow) spreadOn(stations []Station, joints []worth, at int) (reached []int) {
	takers := f.joints[at].takers
	for _, i := range takers {
		out := f.out[i]
		if joints[out].known {
			continue
		}
		s := &stations[i]
		share := joints[at].share * portion(stations, takers, i, (*Station).takesPerMinute)
		good := meanOver(stations, f.joints[out].feeders, (*Station).givesPerMinute, func(k int) (float64, bool) {
			return stations[k].GoodShare, slices.Contains(takers, k)
		})
		joints[out] = worth{
			known:    true,
			perPiece: joints[at].perPiece * float64(s.Takes) / float64(s.Gives),
			yield:    ratio(joints[at].yield, good),
			share:    ratio(share, portion(stations, f.joints[out].feeders, i, (*Station).givesPerMinute)),
		}
		reached = append(reached, out)
	}
	return reached
}

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
