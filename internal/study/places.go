package study

import (
	"tuckline/internal/result"
	"tuckline/sim"
)

func (v view) buffers() []result.Buffer {
	c, places := v.columns, v.model.Places()
	all := make([]result.Buffer, len(places))
	for i, place := range places {
		all[i] = result.Buffer{
			Name: place.Name, Capacity: place.Capacity,
			Level:     c.level(i),
			Full:      c.clockShare(func(r *sim.Record) sim.Micros { return r.Buffers[i].Full }),
			Empty:     c.clockShare(func(r *sim.Record) sim.Micros { return r.Buffers[i].Empty }),
			InTransit: c.over(func(r *sim.Record) float64 { return float64(r.Buffers[i].TransitTime) }, window),
		}
		if i < len(v.scenario.Line.Buffers) {
			v.store(&all[i], &v.scenario.Line.Buffers[i], i)
		}
	}
	return all
}

// level is the mean level over the window, pieces in transit included.
func (c columns) level(buffer int) result.Estimate {
	return c.over(func(r *sim.Record) float64 { return r.Buffers[buffer].MeanLevel(1) }, window)
}

// classes is the mean share of the window in each class of level, by place.
func classes(records []sim.Record, places int) [][]float64 {
	mean := make([][]float64, places)
	for i := range mean {
		for r := range records {
			for k, time := range records[r].Buffers[i].Classes {
				if mean[i] == nil {
					mean[i] = make([]float64, sim.LevelClasses)
				}
				mean[i][k] += float64(time) / float64(records[r].Window) / float64(len(records))
			}
		}
	}
	return mean
}
