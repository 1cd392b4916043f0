package report

import (
	"tuckline/internal/study"
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

func stationColumns(o *study.Outcome, i int) []csvColumn {
	station, line := o.Results.Stations[i], &o.Scenario.Line.Stations[i]
	var columns []csvColumn
	add := func(name string, of func(*sim.StationRecord) string) {
		columns = append(columns, csvColumn{station.Name + ": " + name, func(r *sim.Record) string { return of(&r.Stations[i]) }})
	}
	add("cycles", func(s *sim.StationRecord) string { return integer(s.Cycles) })
	add("scrapped_cycles", func(s *sim.StationRecord) string { return integer(s.ScrappedCycles) })
	add("given", func(s *sim.StationRecord) string { return integer(s.Given) })
	add("rejected", func(s *sim.StationRecord) string { return integer(s.Rejected) })
	add("scrapped", func(s *sim.StationRecord) string { return integer(s.Scrapped) })
	for _, c := range lossColumns {
		if c.has(line) {
			add(c.name, func(s *sim.StationRecord) string { return integer(c.of(s)) })
		}
	}
	for _, c := range stateColumns {
		add(c.name, func(s *sim.StationRecord) string { return seconds(s.States[c.state]) })
	}
	add("held_s", func(s *sim.StationRecord) string { return seconds(s.Holding) })
	if len(o.Records) > 0 && len(o.Records[0].Stations[i].Short) > 0 {
		add("minor_stops", func(s *sim.StationRecord) string { return integer(s.Short[0].Count) })
		add("minor_stops_s", func(s *sim.StationRecord) string { return seconds(s.Short[0].Time()) })
	}
	for k, stop := range station.Stops {
		add("stops of "+stop.Name, func(s *sim.StationRecord) string { return integer(s.Stops[k].Count) })
		add(stop.Name+"_s", func(s *sim.StationRecord) string { return seconds(s.Stops[k].Waiting + s.Stops[k].Down) })
	}
	for k, m := range station.Materials {
		columns = append(columns, materialColumns(i, k, station.Name, m)...)
	}
	for k, check := range station.Checks {
		add("tests of "+check.Name, func(s *sim.StationRecord) string { return integer(s.Checks[k].Count) })
	}
	return columns
}

func bufferColumns(o *study.Outcome, i int) []csvColumn {
	buffer := o.Results.Buffers[i]
	name := buffer.Name
	column := func(what string, of func(*sim.BufferRecord, sim.Micros) string) csvColumn {
		return csvColumn{name + ": " + what, func(r *sim.Record) string { return of(&r.Buffers[i], r.Window) }}
	}
	columns := []csvColumn{
		column("mean_level", func(b *sim.BufferRecord, window sim.Micros) string {
			return decimal(b.MeanLevel(window))
		}),
		column("max_level", func(b *sim.BufferRecord, _ sim.Micros) string { return integer(b.Max) }),
		column("full_s", func(b *sim.BufferRecord, _ sim.Micros) string { return seconds(b.Full) }),
		column("empty_s", func(b *sim.BufferRecord, _ sim.Micros) string { return seconds(b.Empty) }),
	}
	count := func(what string, of func(*sim.BufferRecord) int64) {
		columns = append(columns, column(what, func(b *sim.BufferRecord, _ sim.Micros) string { return integer(of(b)) }))
	}
	if buffer.SensorStopsPerHour.N > 0 {
		count("sensor_stops", func(b *sim.BufferRecord) int64 { return b.SensorStops })
	}
	if buffer.Beside != nil {
		count("kept", func(b *sim.BufferRecord) int64 { return b.Kept })
		count("given_back", func(b *sim.BufferRecord) int64 { return b.GivenBack })
		columns = append(columns, column("ran_dry_s", func(b *sim.BufferRecord, _ sim.Micros) string { return seconds(b.RanDry) }))
		if buffer.Beside.ByHand.N > 0 {
			count("by_hand", func(b *sim.BufferRecord) int64 { return b.ByHand })
			columns = append(columns, column("carried_s", func(b *sim.BufferRecord, _ sim.Micros) string { return seconds(b.HandTime) }))
		}
		if buffer.Beside.Returned.N > 0 {
			count("returned", func(b *sim.BufferRecord) int64 { return b.Returned })
		}
	}
	for k, stop := range buffer.Stops {
		count("stops of "+stop.Name, func(b *sim.BufferRecord) int64 { return b.Stops[k].Count })
		columns = append(columns, column(stop.Name+"_s", func(b *sim.BufferRecord, _ sim.Micros) string {
			return seconds(b.Stops[k].Waiting + b.Stops[k].Down)
		}))
	}
	return columns
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
		column("present_s", func(c *sim.CrewRecord) string { return seconds(c.Present) }),
		column("walking_s", func(c *sim.CrewRecord) string { return seconds(c.Walking) }),
		column("overtime_s", func(c *sim.CrewRecord) string { return seconds(c.Overtime) }),
	}
}
