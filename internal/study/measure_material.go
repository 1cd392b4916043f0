package study

import (
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// stockAt is a material by its place.
type stockAt struct{ station, k int }

// stocks are the materials of the line for which a rule holds, in the order of the line.
func (v view) stocks(which func(*sim.Material) bool) []stockAt {
	var all []stockAt
	for i := range v.scenario.Line.Stations {
		line := v.scenario.Line.Stations[i].Materials
		for k := range line {
			if which(&line[k]) {
				all = append(all, stockAt{i, k})
			}
		}
	}
	return all
}

// nameOf is a material with its station, as "leaflets of cartoner".
func (v view) nameOf(at stockAt) string {
	station := &v.scenario.Line.Stations[at.station]
	return station.Materials[at.k].Name + " of " + station.Name
}

func lateRefills(v view, _ int, per string) []result.Measure {
	stocks := v.stocks(isTask)
	late := func(stocks ...stockAt) result.Estimate {
		return v.count(per, func(r *sim.Record) float64 {
			sum := int64(0)
			for _, at := range stocks {
				sum += materialOf(r, at.station, at.k).Late
			}
			return float64(sum)
		})
	}
	rows := one("line", late(stocks...))
	for _, at := range stocks {
		rows = append(rows, one(v.nameOf(at), late(at))...)
	}
	return rows
}

func lateness(v view, _ int, _ string) []result.Measure {
	var rows []result.Measure
	for _, at := range v.stocks(isTask) {
		rows = append(rows, one(v.nameOf(at), v.tasks(at.station, at.k).MeanLatenessS)...)
	}
	return rows
}

// materialNames are the names of all materials of a line, each once.
func materialNames(line *sim.Line) []string {
	var names []string
	for i := range line.Stations {
		for k := range line.Stations[i].Materials {
			if name := line.Stations[i].Materials[k].Name; !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

func usedUp(v view, of int, _ string) []result.Measure   { return v.perGoodPiece(of, used) }
func wastedUp(v view, of int, _ string) []result.Measure { return v.perGoodPiece(of, wasted) }

// perGoodPiece is what all stations use of the materials of one name per good piece of the
// answer; where the same name has several units, a row for each.
func (v view) perGoodPiece(of int, count func(*sim.MaterialRecord) int64) []result.Measure {
	name := materialNames(&v.scenario.Line)[of]
	named := v.stocks(func(m *sim.Material) bool { return m.Name == name })
	var rows []result.Measure
	for len(named) > 0 {
		unit, scale := v.materialUnit(named[0].station, named[0].k)
		other := func(at stockAt) bool { u, _ := v.materialUnit(at.station, at.k); return u != unit }
		same := slices.DeleteFunc(slices.Clone(named), other)
		value := v.ratio(func(r *sim.Record) float64 {
			sum := int64(0)
			for _, at := range same {
				sum += count(materialOf(r, at.station, at.k))
			}
			return scale * float64(sum)
		}, total(v.scenario))
		rows = append(rows, result.Measure{Of: name, Value: value, Unit: unit})
		named = slices.DeleteFunc(named, func(at stockAt) bool { return !other(at) })
	}
	return rows
}
