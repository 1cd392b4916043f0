package keyfigure

import (
	"math"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// newPlace derives a buffer or conveyor from the set speeds of the stations
// that feed it and the top speeds of those that take from it.
func newPlace(f *flow, stations []Station, index int, people *scenario.Buffer) Place {
	buffer := &f.line.Buffers[index]
	p := Place{
		Name: buffer.Name, Unit: people.Unit, Kind: "buffer", Capacity: buffer.Holds, From: buffer.From,
		TransitSeconds: float64(buffer.Transit) / float64(sim.Second),
		StopUpstream:   buffer.StopUpstream,
	}
	if buffer.Conveyor {
		p.Kind = "conveyor"
	}
	if buffer.Restart.On {
		p.Restart = buffer.Restart.Level
	}
	if buffer.Start.On {
		p.Start = buffer.Start.Level
	}
	node := len(stations) + index
	p.Feed = f.feed(stations, node, map[int]bool{})
	for _, i := range f.downstream(node) {
		p.Drain += stations[i].Top.Cycles * f.takesFrom(i, f.places[index])
	}
	for _, next := range f.after[node] {
		p.To = append(p.To, f.name(next))
	}
	p.fill()
	p.addStore(buffer)
	p.addCovers(f, stations, node)
	return p
}

// feed is what comes into a node at the set speed of the stations that feed it, through
// other places too; of a station with a choice its part.
func (f *flow) feed(stations []Station, node int, seen map[int]bool) float64 {
	sum := 0.0
	seen[node] = true
	for _, from := range f.before[node] {
		switch {
		case from < len(stations):
			sum += f.comesFrom(stations, from, seen) * f.portionInto(stations, from, node)
		case !seen[from]:
			sum += f.feed(stations, from, seen)
		}
	}
	return sum
}

// comesFrom is what a station gives at set speed, or less if those that hand over to it, directly or
// by lanes, give it less.
func (f *flow) comesFrom(stations []Station, station int, seen map[int]bool) float64 {
	s := &stations[station]
	if len(f.before[station]) != 1 || seen[station] {
		return s.Set.Pieces
	}
	seen[station] = true
	before := f.before[station][0]
	if n := len(stations); before >= n {
		if !f.isLanes(before) {
			return s.Set.Pieces
		}
		return min(s.Set.Pieces, f.feed(stations, before, seen)/float64(s.Takes)*float64(s.Gives))
	}
	comes := f.comesFrom(stations, before, seen) * f.portionInto(stations, before, station)
	return min(s.Set.Pieces, comes/float64(s.Takes)*float64(s.Gives))
}

// isLanes says that a place is that of the lanes of a station: the station behind is named so.
func (f *flow) isLanes(node int) bool {
	return len(f.before[node]) == 1 && len(f.after[node]) == 1 && f.name(f.after[node][0]) == f.name(f.before[node][0])+" lanes"
}

func (f *flow) name(node int) string {
	if n := len(f.line.Stations); node >= n {
		return f.line.Buffers[node-n].Name
	}
	return f.line.Stations[node].Name
}

// fill derives what a place means in seconds and minutes of flow. Usable
// buffer = capacity - rate × transit; source: what is in transit takes places.
func (p *Place) fill() {
	onTheWay := p.Feed / 60 * p.TransitSeconds
	p.InTransit = onTheWay
	if p.Capacity == sim.Unlimited {
		return
	}
	capacity := float64(p.Capacity)
	p.Overfull = onTheWay > capacity*(1+1e-9)
	p.InTransit = math.Min(onTheWay, capacity)
	p.Spare = capacity - p.InTransit
	if p.Feed > 0 {
		p.SpareSeconds = 60 * p.Spare / p.Feed
		p.Minutes = capacity / p.Feed
	}
	if p.Drain > p.Feed {
		p.frees = p.Drain - p.Feed
		p.DrainMinutes = capacity / (p.Drain - p.Feed)
	}
}
