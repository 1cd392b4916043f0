package keyfigure

// newStages groups stations side by side and sums their rates: the points of
// the V-curve. Side by side are those that take from one place or give into
// one, then those at the same distance from where branches begin. What the line
// makes at set speed is in answer pieces a minute.
func newStages(f *flow, stations []Station, atSet float64) []Stage {
	stages := f.joinBranches(f.besideEachOther(stations))
	for i := range stages {
		s := &stages[i]
		for _, k := range s.Stations {
			s.add(&stations[k])
		}
		if line := atSet * s.Flow; line > 0 {
			s.OverSpeed = s.Top/line - 1
		}
	}
	return stages
}

func (s *Stage) add(station *Station) {
	s.Set += station.Set.Answer
	s.Top += station.Top.Answer
	s.Effective += station.Effective.Answer
	s.AtMost += station.AtMost.Answer
}

// besideEachOther puts stations that share a place into one stage, in the order of the product.
func (f *flow) besideEachOther(stations []Station) []Stage {
	var stages []Stage
	placed := make([]bool, len(stations))
	for _, node := range f.stationWay() {
		if placed[node] {
			continue
		}
		var stage Stage
		for _, i := range f.beside(node, len(stations)) {
			if !placed[i] {
				placed[i] = true
				stage.Stations = append(stage.Stations, i)
				stage.Flow += stations[i].Flow
			}
		}
		stages = append(stages, stage)
	}
	return stages
}

// beside lists the stations that share the place before or behind with one, itself first.
func (f *flow) beside(one, n int) []int {
	side := []int{one}
	for i := range n {
		sameIn := f.in[i] >= 0 && f.in[i] == f.in[one]
		if i != one && (sameIn || f.out[i] == f.out[one]) {
			side = append(side, i)
		}
	}
	return side
}

// joinBranches puts stages with a part of the flow together whose branches are
// as far along, as long as they have no more than the whole flow.
func (f *flow) joinBranches(stages []Stage) []Stage {
	depth := f.depths(stages)
	var all []Stage
	var deep []int
	for k, stage := range stages {
		at := -1
		for other := range all {
			if deep[other] == depth[k] && f.fit(all[other], stage) {
				at = other
			}
		}
		if at < 0 {
			all, deep = append(all, stage), append(deep, depth[k])
			continue
		}
		all[at].Stations = append(all[at].Stations, stage.Stations...)
		all[at].Flow += stage.Flow
	}
	return all
}

// fit says that two stages can be parts of one.
func (f *flow) fit(one, other Stage) bool {
	return one.Flow > 0 && other.Flow > 0 && one.Flow+other.Flow <= 1+rounding && f.apart(one.Stations, other.Stations)
}

// depths counts the stages of a branch from its beginning.
func (f *flow) depths(stages []Stage) []int {
	depth, of := make([]int, len(stages)), make([]int, len(f.line.Stations))
	for k, stage := range stages {
		for _, i := range stage.Stations {
			of[i] = k
		}
	}
	for k, stage := range stages {
		if stage.Flow >= 1-1e-9 {
			continue
		}
		for _, i := range stage.Stations {
			depth[k] = max(depth[k], 1)
			for _, in := range f.ins[i] {
				for _, feeder := range f.joints[in.joint].feeders {
					depth[k] = max(depth[k], depth[of[feeder]]+1)
				}
			}
		}
	}
	return depth
}
