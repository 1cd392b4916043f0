package study

import "tuckline/sim"

// flow is who feeds whom along a line, places between stations left out.
type flow struct {
	line sim.Line
	// feeders has, for each station, the stations whose pieces it takes.
	feeders [][]int
}

func flowOf(line sim.Line) flow {
	f := flow{line: line, feeders: make([][]int, len(line.Stations))}
	for i := range line.Stations {
		if from := line.Stations[i].From; from != "" {
			f.feeders[i] = f.stationsBehind(from, nil)
		}
	}
	return f
}

// stationsBehind follows a name, through buffers and belts, to the stations that feed it.
func (f flow) stationsBehind(name string, found []int) []int {
	for i := range f.line.Stations {
		if f.line.Stations[i].Name == name {
			return append(found, i)
		}
	}
	for i := range f.line.Buffers {
		if f.line.Buffers[i].Name == name {
			for _, from := range f.line.Buffers[i].From {
				found = f.stationsBehind(from, found)
			}
		}
	}
	return found
}

// consumers are the stations that take pieces of a station.
func (f flow) consumers(station int) []int {
	var all []int
	for i, feeders := range f.feeders {
		for _, one := range feeders {
			if one == station {
				all = append(all, i)
			}
		}
	}
	return all
}

// piecesPerCycle says, for each station, for how many pieces given by station
// at one cycle stands: 4 blisters a cycle and 3 blisters a carton make 4/3
// cartons a cycle. Stations that at has no connection with stay 0.
func (f flow) piecesPerCycle(at int) []float64 {
	pieces := make([]float64, len(f.line.Stations))
	pieces[at] = float64(f.line.Stations[at].Gives)
	for open := []int{at}; len(open) > 0; open = open[1:] {
		i := open[0]
		station := f.line.Stations[i]
		for _, j := range f.feeders[i] {
			if pieces[j] == 0 {
				pieces[j] = pieces[i] * float64(f.line.Stations[j].Gives) / float64(station.Takes)
				open = append(open, j)
			}
		}
		for _, j := range f.consumers(i) {
			if pieces[j] == 0 {
				pieces[j] = pieces[i] * float64(f.line.Stations[j].Takes) / float64(station.Gives)
				open = append(open, j)
			}
		}
	}
	return pieces
}

// upTo marks a station and all stations whose pieces reach it.
func (f flow) upTo(at int) []bool {
	marked := make([]bool, len(f.line.Stations))
	marked[at] = true
	for open := []int{at}; len(open) > 0; open = open[1:] {
		for _, j := range f.feeders[open[0]] {
			if !marked[j] {
				marked[j] = true
				open = append(open, j)
			}
		}
	}
	return marked
}
