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

// counting is where the pieces of the answer are counted.
type counting struct {
	// stations are those after which they are counted, in the order of the line.
	stations []int
	// to and from say of every node whether its pieces reach a count, and
	// whether counted pieces reach it; a station that is counted is in both.
	to, from []bool
}

// newCounting leaves out what is not a station.
func (f *flow) newCounting(stations []int) *counting {
	c := &counting{to: make([]bool, len(f.before)), from: make([]bool, len(f.before))}
	for _, i := range stations {
		if i >= 0 && i < len(f.line.Stations) {
			c.stations = append(c.stations, i)
			mark(c.to, i, f.before)
			mark(c.from, i, f.after)
		}
	}
	return c
}

// mark marks a node and all that follow it.
func mark(marked []bool, node int, next [][]int) {
	marked[node] = true
	for queue := []int{node}; len(queue) > 0; queue = queue[1:] {
		for _, other := range next[queue[0]] {
			if !marked[other] {
				marked[other] = true
				queue = append(queue, other)
			}
		}
	}
}

// counted says that pieces are counted after a station.
func (c *counting) counted(station int) bool { return slices.Contains(c.stations, station) }

// stationWay lists the stations in the order of the product.
func (f *flow) stationWay() []int {
	return slices.DeleteFunc(f.way(), func(node int) bool { return node >= len(f.line.Stations) })
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
			f.spreadBack(stations, joints, c, i)
		}
	}
	f.spreadUnits(stations, joints)
	for _, i := range way {
		if c.from[i] && !c.counted(i) {
			f.spreadOn(stations, joints, c, i)
		}
	}
}

// spreadBack values a station before the count by where its pieces go. What a
// joint is worth is the mean of all the ways from it to a count.
func (f *flow) spreadBack(stations []Station, joints []worth, c *counting, i int) {
	out := &joints[f.out[i]]
	if !out.known {
		takers := f.joints[f.out[i]].takers
		toCount := func(value func(*Station) float64) func(int) (float64, bool) {
			return func(k int) (float64, bool) { return value(&stations[k]), c.to[k] }
		}
		perPiece := meanOver(stations, takers, (*Station).takesPerMinute, toCount((*Station).perPieceTaken))
		counted := meanOver(stations, takers, (*Station).takesPerMinute, toCount(func(s *Station) float64 { return s.perPieceTaken() * s.Yield }))
		*out = worth{known: true, perPiece: perPiece, yield: ratio(counted, perPiece)}
	}
	s := &stations[i]
	s.PerPiece, s.Yield = out.perPiece, s.GoodShare
	if !c.counted(i) {
		s.Yield *= out.yield
	}
}

// spreadUnits values pieces beside and behind the count by takes and gives alone.
func (f *flow) spreadUnits(stations []Station, joints []worth) {
	for again := true; again; {
		again = false
		for i := range stations {
			s, out := &stations[i], &joints[f.out[i]]
			in := &worth{known: true}
			if f.in[i] >= 0 {
				in = &joints[f.in[i]]
			}
			switch {
			case s.PerPiece > 0 && in.known:
				continue
			case out.perPiece > 0:
				s.PerPiece = out.perPiece
				if !in.known {
					*in = worth{known: true, perPiece: s.perPieceTaken()}
				}
			case in.perPiece > 0:
				s.PerPiece = in.perPiece * float64(s.Takes) / float64(s.Gives)
				*out = worth{known: true, perPiece: s.PerPiece}
			default:
				continue
			}
			again = true
		}
	}
}

// spreadOn values a station behind the count: its pieces are those that were
// counted, less what is rejected since.
func (f *flow) spreadOn(stations []Station, joints []worth, c *counting, i int) {
	stations[i].Yield = joints[f.in[i]].yield
	mean := func(value func(int) float64) float64 {
		return meanOver(stations, f.joints[f.out[i]].feeders, (*Station).givesPerMinute, func(k int) (float64, bool) {
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
