package report

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

// stateColumns are the states as columns of replications.csv name them.
var stateColumns = []struct {
	name  string
	state sim.State
}{
	{"running_s", sim.Running},
	{"starved_s", sim.Starved},
	{"blocked_s", sim.Blocked},
	{"down_s", sim.Down},
	{"waiting_s", sim.Waiting},
	{"changeover_s", sim.Changeover},
	{"planned_s", sim.PlannedStop},
	{"off_shift_s", sim.OffShift},
}

func stationColumns(i int, station result.Station) []csvColumn {
	var columns []csvColumn
	add := func(name string, of func(*sim.StationRecord) string) {
		columns = append(columns, csvColumn{station.Name + ": " + name, func(r *sim.Record) string { return of(&r.Stations[i]) }})
	}
	add("cycles", func(s *sim.StationRecord) string { return integer(s.Cycles) })
	add("scrapped_cycles", func(s *sim.StationRecord) string { return integer(s.ScrappedCycles) })
	add("given", func(s *sim.StationRecord) string { return integer(s.Given) })
	add("rejected", func(s *sim.StationRecord) string { return integer(s.Rejected) })
	add("scrapped", func(s *sim.StationRecord) string { return integer(s.Scrapped) })
	for _, c := range stateColumns {
		add(c.name, func(s *sim.StationRecord) string { return seconds(s.States[c.state]) })
	}
	add("held_s", func(s *sim.StationRecord) string { return seconds(s.Holding) })
	for k, stop := range station.Stops {
		add("stops of "+stop.Name, func(s *sim.StationRecord) string { return integer(s.Stops[k].Count) })
		add(stop.Name+"_s", func(s *sim.StationRecord) string { return seconds(s.Stops[k].Waiting + s.Stops[k].Down) })
	}
	return columns
}

func bufferColumns(i int, name string) []csvColumn {
	column := func(what string, of func(*sim.BufferRecord, sim.Micros) string) csvColumn {
		return csvColumn{name + ": " + what, func(r *sim.Record) string { return of(&r.Buffers[i], r.Window) }}
	}
	return []csvColumn{
		column("mean_level", func(b *sim.BufferRecord, window sim.Micros) string {
			return decimal(b.MeanLevel(window))
		}),
		column("max_level", func(b *sim.BufferRecord, _ sim.Micros) string { return integer(b.Max) }),
		column("full_s", func(b *sim.BufferRecord, _ sim.Micros) string { return seconds(b.Full) }),
		column("empty_s", func(b *sim.BufferRecord, _ sim.Micros) string { return seconds(b.Empty) }),
	}
}

func crewColumns(i int, name string) []csvColumn {
	column := func(what string, of func(*sim.CrewRecord) string) csvColumn {
		return csvColumn{name + ": " + what, func(r *sim.Record) string { return of(&r.Crews[i]) }}
	}
	return []csvColumn{
		column("requests", func(c *sim.CrewRecord) string { return integer(c.Requests) }),
		column("waited", func(c *sim.CrewRecord) string { return integer(c.Waited) }),
		column("busy_s", func(c *sim.CrewRecord) string { return seconds(c.Busy) }),
		column("wait_s", func(c *sim.CrewRecord) string { return seconds(c.WaitTime) }),
	}
}
