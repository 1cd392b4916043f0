package keyfigure

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
// against the flow and with it, and writes it into the stations.
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
			yield:    meanYield(stations, f.joints[in].takers, feeders),
			share:    s.Flow / portion(stations, f.joints[in].takers, i, (*Station).takesPerMinute),
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
		joints[out] = worth{
			known:    true,
			perPiece: joints[at].perPiece * float64(s.Takes) / float64(s.Gives),
			yield:    joints[at].yield / max(s.GoodShare, 1e-9),
			share:    share / portion(stations, f.joints[out].feeders, i, (*Station).givesPerMinute),
		}
		reached = append(reached, out)
	}
	return reached
}

// meanYield is the yield before stations side by side: that of each of them
// that is valued, by the flow that it takes.
func meanYield(stations []Station, takers, valued []int) float64 {
	sum, weight := 0.0, 0.0
	for _, i := range takers {
		for _, v := range valued {
			if v == i {
				sum += stations[i].Yield * stations[i].takesPerMinute()
				weight += stations[i].takesPerMinute()
			}
		}
	}
	return sum / weight
}

// portion is the part of one of several stations side by side: flow divides in
// proportion to set speeds.
func portion(stations []Station, side []int, one int, rate func(*Station) float64) float64 {
	sum := 0.0
	for _, i := range side {
		sum += rate(&stations[i])
	}
	return rate(&stations[one]) / sum
}

func (s *Station) givesPerMinute() float64 { return s.Set.Cycles * float64(s.Gives) }
func (s *Station) takesPerMinute() float64 { return s.Set.Cycles * float64(s.Takes) }
