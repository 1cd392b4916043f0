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
	node := len(stations) + index
	for _, i := range f.upstream(node) {
		p.Feed += stations[i].Set.Pieces
	}
	for _, i := range f.downstream(node) {
		p.Drain += stations[i].Top.Cycles * float64(stations[i].Takes)
	}
	for _, next := range f.after[node] {
		p.To = append(p.To, f.name(next))
	}
	p.fill()
	return p
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
		p.DrainMinutes = capacity / (p.Drain - p.Feed)
	}
}
