package keyfigure

// newStages groups stations side by side, which take from one place or give
// into one, and sums their rates: the points of the V-curve.
func newStages(f *flow, stations []Station) []Stage {
	var stages []Stage
	of := make([]int, len(stations))
	for i := range of {
		of[i] = -1
	}
	for _, node := range f.way() {
		if node >= len(stations) || of[node] >= 0 {
			continue
		}
		stages = append(stages, Stage{})
		for _, i := range f.beside(node, len(stations)) {
			if of[i] < 0 {
				of[i] = len(stages) - 1
				stages[of[i]].add(i, &stations[i])
			}
		}
	}
	lowest := 0.0
	for _, s := range stages {
		if s.Set > 0 && (lowest == 0 || s.Set < lowest) {
			lowest = s.Set
		}
	}
	for i := range stages {
		if lowest > 0 {
			stages[i].OverSpeed = stages[i].Top/lowest - 1
		}
	}
	return stages
}

func (s *Stage) add(index int, station *Station) {
	s.Stations = append(s.Stations, index)
	s.Set += station.Set.Answer
	s.Top += station.Top.Answer
	s.Effective += station.Effective.Answer
	s.AtMost += station.AtMost.Answer
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
