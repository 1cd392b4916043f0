package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

func (v view) stations() []result.Station {
	c, s, m := v.columns, v.scenario, v.model
	all := make([]result.Station, len(s.Line.Stations))
	for i := range all {
		of := func(count func(*sim.StationRecord) int64) result.Estimate {
			return c.perHour(func(r *sim.Record) int64 { return count(&r.Stations[i]) })
		}
		all[i] = result.Station{
			Name:            s.Line.Stations[i].Name,
			CyclesPerHour:   of(func(r *sim.StationRecord) int64 { return r.Cycles }),
			GivenPerHour:    of(func(r *sim.StationRecord) int64 { return r.Given }),
			RejectedPerHour: of(func(r *sim.StationRecord) int64 { return r.Rejected }),
			ScrappedPerHour: of(func(r *sim.StationRecord) int64 { return r.Scrapped }),
			States:          c.states(i),
			Holding:         c.share(func(r *sim.Record) sim.Micros { return r.Stations[i].Holding }),
			Stops:           v.stops(i, m.StopNames(i), m.StopClasses(i)),
			Pieces:          c.pieces(&s.Line.Stations[i], i),
			Materials:       v.materials(i),
			Checks:          c.checks(s.Line.Stations[i].Checks, i),
			Origins:         v.origins(i),
			Waits:           v.waits(stationWaits(i)),
			WaitsFor:        v.waitsFor(i),
		}
		if s.Line.Stations[i].EmptyPockets.On {
			all[i].EmptyPocketsPerHour = of(func(r *sim.StationRecord) int64 { return r.EmptyPockets })
		}
	}
	return all
}

func (c columns) states(station int) result.States {
	in := func(state sim.State) result.Estimate {
		return c.share(func(r *sim.Record) sim.Micros { return r.Stations[station].States[state] })
	}
	return result.States{
		Running: in(sim.Running), Starved: in(sim.Starved), Blocked: in(sim.Blocked),
		Down: in(sim.Down), Waiting: in(sim.Waiting), Changeover: in(sim.Changeover),
		Planned:  in(sim.PlannedStop),
		OffShift: c.clockShare(func(r *sim.Record) sim.Micros { return r.Stations[station].States[sim.OffShift] }),
	}
}

func (v view) stops(station int, names []string, classes []sim.Class) []result.Stop {
	all := make([]result.Stop, len(names))
	for k := range names {
		all[k] = result.Stop{
			Name: names[k], Class: classes[k].String(),
			PerHour: v.perHour(func(r *sim.Record) int64 { return r.Stations[station].Stops[k].Count }),
			Down:    v.share(func(r *sim.Record) sim.Micros { return v.stoodFor(r, station, k) }),
		}
	}
	return all
}

// stoodFor is how long a station stood because of a cause of its own, waiting for the crew included. With a calendar a stop may be
// open in breaks and between shifts: there it is the time in the states, in which these come first.
func (v view) stoodFor(r *sim.Record, station, cause int) sim.Micros {
	if v.scenario.Calendar == nil {
		return stopped(&r.Stations[station].Stops[cause])
	}
	for _, by := range r.Stations[station].StoppedBy {
		if by.Station == station && by.Cause == cause {
			return by.Waiting + by.Down
		}
	}
	return 0
}

// stopped is how long a stop kept its station, waiting for the crew included.
func stopped(r *sim.StopRecord) sim.Micros { return r.Waiting + r.Down }
