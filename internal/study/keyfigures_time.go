package study

import (
	"strings"

	"tuckline/internal/keyfigure"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// machineTime is where the time of one station went in one window, before anybody decides how it counts. Everything but the
// three sums of minor stops is apart from each other and sums to the window.
type machineTime struct {
	window, offShift, running, changeover sim.Micros
	// planned are the breaks and other times in which the line stands, by the words of scenario.BusyWords; heatUp is
	// other planned stops.
	planned map[string]sim.Micros
	heatUp  sim.Micros
	// material is the time under stops for material, stops that under all others, waits blocked and starved.
	material, stops, waits sim.Micros
	// minorStops and minorWaits are the parts of stops and waits in standstills shorter than each limit.
	minorStops, minorWaits []sim.Micros
	// external is the part of the time lost by causes outside the machine, externalToLine outside the line.
	external, externalToLine sim.Micros
}

// clockOf reads the times of stations off records.
type clockOf struct {
	scenario *scenario.Scenario
	// classes are those of the causes of each station.
	classes [][]sim.Class
}

func newClock(s *scenario.Scenario, m *sim.Model) clockOf {
	c := clockOf{scenario: s}
	for i := range s.Line.Stations {
		c.classes = append(c.classes, m.StopClasses(i))
	}
	return c
}

// class is the class of a cause; ok is false for what is no stop of a station.
func (c clockOf) class(station, cause int) (class sim.Class, ok bool) {
	if station < 0 || station >= len(c.classes) || cause < 0 || cause >= len(c.classes[station]) {
		return 0, false
	}
	return c.classes[station][cause], true
}

// times are those of a station. What a stop takes is read off the states, in which a break comes first: the part of
// a stop that lies in a break is break, and counts once.
func (c clockOf) times(r *sim.Record, station int) machineTime {
	one := &r.Stations[station]
	t := machineTime{
		window: r.Window, offShift: one.States[sim.OffShift], running: one.States[sim.Running], changeover: one.States[sim.Changeover],
		waits:    one.States[sim.Blocked] + one.States[sim.Starved],
		planned:  standing(&c.scenario.Line.Calendar, c.scenario.Run.WarmUp, r.Window),
		external: one.States[sim.Blocked] + one.States[sim.Starved],
	}
	t.heatUp = one.States[sim.PlannedStop]
	for _, lasts := range t.planned {
		t.heatUp -= lasts
	}
	for _, by := range one.StoppedBy {
		switch class, ok := c.class(by.Station, by.Cause); {
		case ok && class == sim.MaterialChange:
			t.material += by.Waiting + by.Down
		case ok && class == sim.External:
			t.external += by.Waiting + by.Down
			t.externalToLine += by.Waiting + by.Down
		}
	}
	t.externalToLine += c.fromOutside(one)
	t.stops = one.States[sim.Down] + one.States[sim.Waiting] - t.material
	for _, short := range one.Short {
		t.minorStops = append(t.minorStops, short.Waiting+short.Down)
		t.minorWaits = append(t.minorWaits, short.Blocked+short.Starved)
	}
	return t
}

// fromOutside is the time of waits that go back to causes outside the line.
func (c clockOf) fromOutside(one *sim.StationRecord) sim.Micros {
	var sum sim.Micros
	for _, b := range one.Because {
		class, ok := c.class(b.Station, b.Cause)
		if b.Cause == sim.CauseSupply || ok && class == sim.External {
			sum += b.Blocked + b.Starved
		}
	}
	return sum
}

// standing is the time in a window in which the calendar lets the line stand, by the words for it.
func standing(c *sim.Calendar, from, lasts sim.Micros) map[string]sim.Micros {
	by := map[string]sim.Micros{}
	for name, time := range spansStanding(c, from, lasts) {
		by[busyWord(name)] += time
	}
	return by
}

// spansStanding is the same by the names of the spans.
func spansStanding(c *sim.Calendar, from, lasts sim.Micros) map[string]sim.Micros {
	by := map[string]sim.Micros{}
	cycle := c.Cycle()
	if cycle == 0 {
		return by
	}
	begin := from / cycle * cycle
	for begin < from+lasts {
		for i := range c.Spans {
			end := begin + c.Spans[i].Lasts
			if inside := min(end, from+lasts) - max(begin, from); inside > 0 && c.Spans[i].Line == sim.LineStands {
				by[c.Spans[i].Name] += inside
			}
			begin = end
		}
	}
	return by
}

// busyWord is the word of the key figures for the name of a span.
func busyWord(name string) string {
	for _, word := range scenario.BusyWords {
		if strings.TrimSuffix(word, "s") == strings.TrimSuffix(name, "s") {
			return word
		}
	}
	return "breaks"
}

// count counts the times one way. Its elements production, set-up, delay and down sum to the planned busy time, to the microsecond.
func (t machineTime) count(by scenario.Counting, limit int) keyfigure.ISOTimes {
	planned := t.window - t.offShift
	production, setup := t.running, t.heatUp
	delay, down := t.stops, t.waits
	for word, lasts := range t.planned {
		switch {
		case by.Leaves(word):
			planned -= lasts
		case word == "breaks":
			down += lasts
		default:
			setup += lasts
		}
	}
	if by.Leaves("changeover") {
		planned -= t.changeover
	} else {
		setup += t.changeover
	}
	switch by.MaterialIn {
	case scenario.FromPlanned:
		planned -= t.material
	case scenario.FromPerformance:
		production += t.material
	default:
		delay += t.material
	}
	if by.MinorIn == scenario.FromPerformance && limit < len(t.minorStops) {
		production += t.minorStops[limit] + t.minorWaits[limit]
		delay -= t.minorStops[limit]
		down -= t.minorWaits[limit]
	}
	return keyfigure.ISOTimes{
		PlannedBusy: minutes(planned), Production: minutes(production), Setup: minutes(setup),
		Delay: minutes(delay), Down: minutes(down),
	}
}

// operating is the operating time: scheduled, without breaks and other planned stops, and without changeovers.
func (t machineTime) operating() sim.Micros { return t.running + t.stops + t.material + t.waits }

func minutes(t sim.Micros) float64 { return float64(t) / float64(sim.Minute) }
