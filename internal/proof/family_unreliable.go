package proof

import (
	"fmt"
	"strings"

	"tuckline/sim"
)

// unreliable: exponential cycles, failures and repairs, with or without a crew.
func unreliable(e *entry) {
	line := serial(each(inverse(e.numbers("service_rates")), e.exp), e.places("slots_between")...)
	calendar := e.unreliableStops(&line)
	e.repairers(&line, e.given["repair_crew"])
	words := fmt.Sprintf("%d stations, rates %s, failures %s, repairs %s, places %s, repairers: %s; %s",
		len(line.Stations), e.given["service_rates"], e.given["fail_rates"], e.given["repair_rates"], e.given["slots_between"], e.given["repair_crew"], e.given["failure_mode"])
	mapping := "An interrupted cycle goes on after the repair. Down counts the wait for a repairer."
	if calendar {
		mapping += " Stops on the calendar; a stopped empty station takes its input, a finished piece leaves it, and both overlap with down."
	}
	n := len(line.Stations)
	c := e.sim(words, mapping, line, e.settled(line))
	e.compare(c, "throughput", e.rate(n-1))
	e.shares(c, "down_prob_by_station", every(n, in(sim.Down, sim.Waiting))...)
	if calendar {
		e.shares(c, "blocked_prob_by_station", every(n, holding)...)
		e.leave("starved_prob_by_station", "the source counts an empty station that is down as well; the record counts it as down and does not keep for how long it was empty")
	}
	e.serialFigures(c)
}

// unreliableStops puts the stops of the mode; it tells whether they come by the calendar.
func (e *entry) unreliableStops(line *sim.Line) (calendar bool) {
	clock := sim.RunningClock
	if strings.HasPrefix(e.given["failure_mode"], "TDF") {
		clock, calendar = sim.CalendarClock, true
		for i := range line.Stations {
			line.Stations[i].LoadsWhileStopped = true
		}
	}
	e.fails(line, clock, e.numbers("fail_rates"), e.numbers("repair_rates"))
	return calendar
}

// repairers gives all stops to one crew of so many people.
func (e *entry) repairers(line *sim.Line, people string) {
	if people == "unlimited" || people == "" {
		return
	}
	line.Crews = []sim.Crew{{Name: "repairers", People: int(e.parse("repairers", people))}}
	for i := range line.Stations {
		for k := range line.Stations[i].Stops {
			line.Stations[i].Stops[k].Crew = sim.Work{Crew: "repairers", People: 1}
		}
	}
}
