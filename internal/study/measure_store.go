package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

func dry(v view, of int, _ string) []result.Measure {
	return one(v.model.Places()[of].Name, v.dryWindows(of))
}

func stopsOfStore(v view, of int, per string) []result.Measure {
	return one(v.model.Places()[of].Name, v.count(per, func(r *sim.Record) float64 {
		var n int64
		for _, stop := range r.Buffers[of].Stops {
			n += stop.Count
		}
		return float64(n)
	}))
}

// carried are the pieces that people carry, for each hand magazine.
func carried(v view, _ int, per string) []result.Measure {
	var rows []result.Measure
	for i := range v.scenario.Line.Buffers {
		if b := &v.scenario.Line.Buffers[i]; b.Kind == sim.HandMagazine {
			value := v.count(per, func(r *sim.Record) float64 { return float64(r.Buffers[i].ByHand) })
			rows = append(rows, result.Measure{Of: b.Name, Value: value, Unit: v.scenario.Buffers[i].Unit})
		}
	}
	return rows
}
