package keyfigure

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// The demo lines as Go values. All names and figures are invented.

func law(l sim.Law, err error) sim.Law {
	if err != nil {
		panic(err)
	}
	return l
}

func minutes(m float64) float64 { return m * float64(sim.Minute) }

// build collects a scenario entry by entry.
type build struct{ scenario.Scenario }

func (b *build) station(line sim.Station, people scenario.Station, perMinute, top float64) {
	people.SetCycle = float64(sim.Minute) / perMinute
	people.TopCycle = people.SetCycle
	if top > 0 {
		people.TopCycle = float64(sim.Minute) / top
	}
	line.Cycle = sim.Fixed(people.SetCycle)
	b.Line.Stations = append(b.Line.Stations, line)
	b.Stations = append(b.Stations, people)
}

func (b *build) belt(name, from string, metres, perMinute, pitch float64) {
	speed := perMinute * 1e6 / 60
	b.Line.Buffers = append(b.Line.Buffers, sim.Buffer{
		Name: name, From: []string{from}, Conveyor: true, Holds: int64(1000 * metres / pitch),
		Transit: sim.Micros(metres / perMinute * float64(sim.Minute)),
	})
	b.Buffers = append(b.Buffers, scenario.Buffer{
		Unit: "blisters", Length: sim.Micrometres(metres * 1e6), Pitch: sim.Micrometres(pitch * 1e3), Speed: speed,
	})
}

func (b *build) store(name string, holds int64, from ...string) {
	b.Line.Buffers = append(b.Line.Buffers, sim.Buffer{
		Name: name, From: from, Holds: holds, Restart: sim.Level{On: true, Level: holds * 7 / 10},
	})
	b.Buffers = append(b.Buffers, scenario.Buffer{Unit: "blisters"})
}

// starts gives the last store a start level in per cent.
func (b *build) starts(percent int64) {
	store := &b.Line.Buffers[len(b.Line.Buffers)-1]
	store.Start = sim.Level{On: true, Level: store.Holds * percent / 100}
}

// reel is a reel of web: diameters and unusable length in mm and m, thickness in µm, index in mm.
type reel struct {
	name                              string
	outer, thickness, unusable, index float64
	change                            float64
}

func (r reel) add(line *sim.Station, people *scenario.Station) {
	usable := 1e3*ReelLength(r.outer, 76, r.thickness/1e3) - 1e6*r.unusable
	line.Materials = append(line.Materials, sim.Material{
		Name: r.name, Amount: int64(usable), Refill: int64(usable), PerCycle: int64(1e3 * r.index),
		Lasts: sim.Fixed(minutes(r.change)), Crew: sim.Work{Crew: "operators", People: 1},
	})
	people.Materials = append(people.Materials, scenario.Material{
		Kind: "reel", Unit: "m", AlarmAt: -1, Outer: sim.Micrometres(1e3 * r.outer), Core: 76_000,
		Thickness: sim.Micrometres(r.thickness), Unusable: sim.Micrometres(1e6 * r.unusable),
	})
}

func stock(line *sim.Station, people *scenario.Station, kind, name, unit string, holds, perCycle, refill, alarm int64, lasts float64) {
	line.Materials = append(line.Materials, sim.Material{
		Name: name, Amount: holds, PerCycle: perCycle, Refill: refill, Lasts: sim.Fixed(minutes(lasts)),
		Crew: sim.Work{Crew: "operators", People: 1}, Alarm: sim.Level{On: true, Level: alarm},
	})
	people.Materials = append(people.Materials, scenario.Material{Kind: kind, Unit: unit, AlarmAt: alarm})
}

func stops(clock sim.Clock, minor, minorLasts, minorCV, breakdown, breakdownLasts float64) []sim.Stop {
	return []sim.Stop{
		{
			Name: "minor stop", Clock: clock, Every: law(sim.Exponential(minor)),
			Lasts: law(sim.Lognormal(minutes(minorLasts), minorCV)), Crew: sim.Work{Crew: "operators", People: 1},
		},
		{
			Name: "breakdown", Clock: clock, Every: law(sim.Exponential(breakdown)), Class: sim.Breakdown,
			Lasts: law(sim.Exponential(minutes(breakdownLasts))), Crew: sim.Work{Crew: "technicians", People: 1},
		},
	}
}

func endStop(every float64) []sim.Stop {
	return []sim.Stop{{
		Name: "end-of-line stop", Clock: sim.PieceClock, Every: law(sim.Exponential(every)),
		Lasts: law(sim.Lognormal(minutes(1.2), 0.8)), Crew: sim.Work{Crew: "operators", People: 1},
	}}
}

// endOfLine adds print-and-check to case packer; all stop with the cartoner.
func (b *build) endOfLine(check, label, bundle, perBundle, packer, perCase, stopEvery float64) {
	cartons := scenario.Station{TakesUnit: "cartons", GivesUnit: "cartons"}
	b.station(sim.Station{
		Name: "print-and-check", From: "cartoner", Takes: 1, Gives: 1, StopsWith: "cartoner", Stops: endStop(stopEvery),
	}, cartons, check, 0)
	b.station(sim.Station{Name: "tamper label", From: "print-and-check", Takes: 1, Gives: 1, StopsWith: "cartoner"}, cartons, label, 0)
	b.Answer = scenario.Answer{Unit: "cartons", CountedAfter: []int{len(b.Line.Stations) - 1}, Per: "shift"}
	b.Line.Crews = []sim.Crew{{Name: "operators", People: 3}, {Name: "technicians", People: 1, ElsewhereShare: 0.5, ElsewhereSpell: 20 * sim.Minute}}
	b.station(sim.Station{Name: "bundler", From: "tamper label", Takes: int64(perBundle), Gives: 1, StopsWith: "cartoner"},
		scenario.Station{TakesUnit: "cartons", GivesUnit: "bundles"}, bundle, 0)
	b.station(sim.Station{Name: "case packer", From: "bundler", Takes: int64(perCase), Gives: 1, StopsWith: "cartoner"},
		scenario.Station{TakesUnit: "bundles", GivesUnit: "cases"}, packer, 0)
}
