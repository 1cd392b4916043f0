package keyfigure

import (
	"fmt"
	"slices"

	"tuckline/sim"
)

// Cover is the number of free places that a stop behind a store needs so that what is before goes on:
// time of the stop × (feed - what stations beside it go on taking). Source: own arithmetic; of a log-normal law e^(μ + zσ) × feed.
type Cover struct {
	Station, Cause string
	// After is what a stock still lasts from its alarm on, in minutes: only what is longer stops the station.
	After float64
	// P90, P95 and P99 are the free places for so many of 100 stops.
	P90, P95, P99 float64
	// Frees are the minutes in which those behind the store free them at top speed: places/(drain - feed), or by the surplus of the store;
	// 0 if they never do.
	Frees90, Frees95, Frees99 float64
}

// addCovers derives them for the stations that stand with those that take from a store.
func (p *Place) addCovers(f *flow, stations []Station, node int) {
	if p.Kind != "buffer" || p.Lies == byHand || p.Feed <= 0 {
		return
	}
	for _, i := range f.standsWith(node) {
		s := &f.line.Stations[i]
		rate := max(0, p.Feed-f.goesOn(stations, node, i))
		for k := range s.Stops {
			p.cover(s.Name, s.Stops[k].Name, s.Stops[k].Lasts, 0, rate)
		}
		for k := range s.Materials {
			m := &s.Materials[k]
			switch {
			case m.Store.On:
			case m.Alarm.On:
				p.cover(s.Name, m.Name, m.Lasts, stations[i].Materials[k].AlarmMinutes, rate)
			default:
				p.cover(s.Name, m.Name, m.Lasts, 0, rate)
			}
		}
	}
}

// goesOn is what the takers of a place take at top speed that do not stand when one of those
// behind it stops, pieces a minute.
func (f *flow) goesOn(stations []Station, node, stopped int) (sum float64) {
	groups := stopGroups(f.line)
	for _, k := range f.downstream(node) {
		stands := false
		for _, i := range f.handsTo(k) {
			stands = stands || slices.Contains(groups[stopped], i)
		}
		if !stands {
			sum += stations[k].Top.Cycles * f.takesFrom(k, f.places[node-len(stations)])
		}
	}
	return sum
}

// handsTo are a station and all that it hands over to with no store between.
func (f *flow) handsTo(station int) []int {
	all := []int{station}
	for at := 0; at < len(all); at++ {
		for _, next := range f.after[all[at]] {
			if next < len(f.line.Stations) && !slices.Contains(all, next) {
				all = append(all, next)
			}
		}
	}
	return all
}

// standsWith are the takers of a place, those that they hand over to with no store between,
// and those that stop with one of them.
func (f *flow) standsWith(node int) (all []int) {
	groups := stopGroups(f.line)
	for _, taker := range f.downstream(node) {
		for _, i := range f.handsTo(taker) {
			for _, k := range groups[i] {
				if !slices.Contains(all, k) {
					all = append(all, k)
				}
			}
		}
	}
	slices.Sort(all)
	return all
}

func (p *Place) cover(station, cause string, lasts sim.Law, after, rate float64) {
	c := Cover{Station: station, Cause: cause, After: after}
	for _, one := range []struct {
		share         float64
		places, frees *float64
	}{{0.90, &c.P90, &c.Frees90}, {0.95, &c.P95, &c.Frees95}, {0.99, &c.P99, &c.Frees99}} {
		*one.places = rate * max(0, lasts.Quantile(one.share)/minute-after)
		if p.frees > 0 {
			*one.frees = *one.places / p.frees
		}
	}
	p.Covers = append(p.Covers, c)
}

// short is the figures alone.
func (c *Cover) short(p *Place) string {
	text := fmt.Sprintf("%s, %s, %s %s", fixed(c.P90, 0), fixed(c.P95, 0), fixed(c.P99, 0), p.Unit)
	if p.frees > 0 && c.P99 > 0 {
		text += fmt.Sprintf("; free again in %s, %s, %s min", number(c.Frees90), number(c.Frees95), number(c.Frees99))
	}
	return text
}

func (c *Cover) text(p *Place) string {
	if c.After > 0 && c.P99 <= 0 {
		return fmt.Sprintf("none for 99 %% of %s at %s: done within the %s min from the alarm, if somebody comes at once",
			c.Cause, c.Station, number(c.After))
	}
	text := fmt.Sprintf("%s, %s, %s %s for 90, 95, 99 %% of %s at %s", fixed(c.P90, 0), fixed(c.P95, 0), fixed(c.P99, 0), p.Unit, c.Cause, c.Station)
	if c.After > 0 {
		text += fmt.Sprintf(" after the %s min from the alarm", number(c.After))
	}
	if p.frees > 0 {
		return text + fmt.Sprintf("; free again in %s, %s, %s min at top speed", number(c.Frees90), number(c.Frees95), number(c.Frees99))
	}
	return text + "; never free again, since no more goes out at top speed than comes in"
}

// covers are one row for each cause; its value is that of 95 of 100 stops.
func (l *list) covers(p *Place) {
	for i := range p.Covers {
		c := &p.Covers[i]
		l.rows = append(l.rows, Row{
			Group: l.group, Name: "free places for 90, 95, 99 % of " + c.Cause + " at " + c.Station,
			Value: c.P95, Unit: p.Unit, Text: c.short(p),
		})
	}
}
