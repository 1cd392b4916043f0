package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

// materials are in the order of the station.
func (v view) materials(station int) []result.Material {
	line := v.scenario.Line.Stations[station].Materials
	var all []result.Material
	for k := range line {
		all = append(all, v.material(&line[k], station, k))
	}
	return all
}

func (v view) material(line *sim.Material, station, k int) result.Material {
	unit, scale := v.materialUnit(station, k)
	of := func(count func(*sim.MaterialRecord) int64) func(*sim.Record) float64 {
		return func(r *sim.Record) float64 { return scale * float64(count(materialOf(r, station, k))) }
	}
	perHour := func(count func(*sim.Record) float64) result.Estimate { return v.count("hour", count) }
	good := total(v.scenario)
	m := result.Material{
		Name: line.Name, Unit: unit,
		UsedPerHour: perHour(of(used)), WastedPerHour: perHour(of(wasted)),
		UsedPerAnswer: v.ratio(of(used), good), WastedPerAnswer: v.ratio(of(wasted), good),
	}
	if isTask(line) {
		m.Tasks = v.tasks(station, k)
	}
	if line.SpliceFails > 0 {
		m.FailedSplicesPerHour = v.perHour(func(r *sim.Record) int64 { return materialOf(r, station, k).FailedSplices })
	}
	if line.MisPicks.Share > 0 {
		m.FailedPicksPerHour = v.perHour(func(r *sim.Record) int64 { return materialOf(r, station, k).FailedPicks })
	}
	return m
}

func materialOf(r *sim.Record, station, k int) *sim.MaterialRecord {
	return &r.Stations[station].Materials[k]
}

// materialUnit is the unit of a material and what one unit of the engine is in it: web is
// counted in micrometres there, and shown in metres.
func (v view) materialUnit(station, k int) (unit string, scale float64) {
	words := v.scenario.Stations[station].Materials
	if k < len(words) {
		unit = words[k].Unit
	}
	if v.scenario.Line.Stations[station].Materials[k].Web || unit == "m" {
		return "m", 1e-6
	}
	return unit, 1
}

func used(m *sim.MaterialRecord) int64   { return m.Used }
func wasted(m *sim.MaterialRecord) int64 { return m.Wasted }

// isTask says that somebody refills, splices or prepares it while the station runs.
func isTask(m *sim.Material) bool { return m.Alarm.On || m.Store.On || m.Prepare.On }

func (v view) tasks(station, k int) *result.Tasks {
	of := func(r *sim.Record) *sim.MaterialRecord { return materialOf(r, station, k) }
	return &result.Tasks{
		PerHour:       v.perHour(func(r *sim.Record) int64 { return of(r).Tasks }),
		LatePerHour:   v.perHour(func(r *sim.Record) int64 { return of(r).Late }),
		Late:          v.ratio(func(r *sim.Record) float64 { return float64(of(r).Late) }, func(r *sim.Record) float64 { return float64(of(r).Tasks) }),
		MeanLatenessS: v.ratio(func(r *sim.Record) float64 { return inSeconds(of(r).Lateness) }, func(r *sim.Record) float64 { return float64(of(r).Late) }),
	}
}

func inSeconds(t sim.Micros) float64 { return float64(t) / float64(sim.Second) }

func (c columns) checks(checks []sim.Check, station int) []result.Check {
	var all []result.Check
	for k := range checks {
		all = append(all, result.Check{
			Name:    checks[k].Name,
			PerHour: c.perHour(func(r *sim.Record) int64 { return r.Stations[station].Checks[k].Count }),
		})
	}
	return all
}
