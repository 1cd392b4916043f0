package keyfigure

import (
	"fmt"
	"sort"

	"tuckline/sim"
)

// pair is a station, the place behind it and the one station that takes from there.
type pair struct {
	from, to sim.Station
}

// tight warns of places so few that two stations wait for each other although
// nothing stops and both are quick enough, which no arithmetic of speeds shows.
func (f *Figures) tight(line *sim.Line) []string {
	var all []string
	for i := range f.Places {
		p := &f.Places[i]
		one, ok := f.pairAt(line, p)
		// Room for two outputs beside a rest that is too small to take is enough.
		roomy := 2*one.from.Gives + one.to.Takes - 1
		if !ok || p.Capacity == sim.Unlimited || p.Capacity >= roomy {
			continue
		}
		now, free := one.rate(p.Capacity), one.rate(roomy)
		if now == 0 || now >= free*(1-noticed) {
			continue
		}
		enough := p.Capacity + 1 + int64(sort.Search(int(roomy-p.Capacity-1), func(k int) bool {
			return one.rate(p.Capacity+1+int64(k)) >= free*(1-noticed)
		}))
		all = append(all, one.text(p, now, free, enough))
	}
	return all
}

// noticed is the share of the rate from which a loss is worth a warning.
const noticed = 0.005

// pairAt finds the stations at a place, if there is just one on each side and no
// way between, and neither has another place to look to.
func (f *Figures) pairAt(line *sim.Line, p *Place) (one pair, ok bool) {
	if len(p.From) != 1 || len(p.To) != 1 || p.TransitSeconds > 0 {
		return one, false
	}
	found := 0
	for k := range f.Stations {
		if own := &line.Stations[k]; len(own.Also)+len(own.Sends.To) > 0 || own.Coupled != "" {
			continue
		}
		s := sim.Station{
			Name: f.Stations[k].Name, Takes: max(1, line.Stations[k].Takes), Gives: max(1, line.Stations[k].Gives),
			Cycle: sim.Fixed(minute / f.Stations[k].Set.Cycles), BlocksBefore: line.Stations[k].BlocksBefore,
		}
		if words := &line.Stations[k]; len(words.Also)+len(words.Sends.To) > 0 || words.Coupled != "" {
			continue // more than a pair takes part
		}
		switch s.Name {
		case p.From[0]:
			s.Takes = 1
			one.from = s
			found++
		case p.To[0]:
			s.Gives, s.BlocksBefore = 1, false
			one.to = s
			found++
		}
	}
	return one, found == 2
}

// rate is how many pieces a minute the pair hands over without stops, simulated for
// some hundreds of cycles of the slower one; 0 if so few places would lock.
func (p pair) rate(holds int64) float64 {
	const place = "between"
	p.to.From = place
	model, err := sim.Compile(sim.Line{
		Stations: []sim.Station{p.from, p.to},
		Buffers:  []sim.Buffer{{Name: place, From: []string{p.from.Name}, Holds: holds}},
	})
	if err != nil {
		return 0
	}
	gives, takes := float64(p.from.Gives), float64(p.to.Takes)
	period := max(p.from.Cycle.Mean()*max(1, takes/gives), p.to.Cycle.Mean()*max(1, gives/takes))
	window := sim.Micros(600 * period)
	record := model.NewEngine().Run(sim.Options{Seed: 1, Replication: 1, WarmUp: window / 10, Measure: window})
	return float64(record.Stations[0].Given) / (float64(window) / minute)
}

func (p pair) text(place *Place, now, free float64, enough int64) string {
	why := "they leave together and have to find room"
	if p.from.BlocksBefore {
		why = fmt.Sprintf("all %s of them have to find room before a cycle begins", count(p.from.Gives))
	}
	return fmt.Sprintf("Even without a stop %s hands %s %s/min over to %s, not %s: %s, and there are %s places. With %s places it would be %s.",
		p.from.Name, number(now), place.Unit, p.to.Name, number(free), why, count(place.Capacity), count(enough), number(free))
}
