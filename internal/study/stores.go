package study

import (
	"tuckline/internal/estimate"
	"tuckline/internal/result"
	"tuckline/sim"
)

// store adds what only some places have: sensors, a way beside the line, stops of their own.
func (v view) store(b *result.Buffer, line *sim.Buffer, i int) {
	if line.Full.On {
		b.SensorStopsPerHour = v.perHour(func(r *sim.Record) int64 { return r.Buffers[i].SensorStops })
	}
	if line.Kind != sim.InLine {
		b.Beside = v.beside(line, i)
	}
	classes := v.model.StoreStopClasses(i)
	for k, name := range v.model.StoreStopNames(i) {
		b.Stops = append(b.Stops, v.storeStop(i, k, name, classes[k]))
	}
}

func (v view) beside(line *sim.Buffer, i int) *result.Beside {
	of := func(count func(*sim.BufferRecord) int64) result.Estimate {
		return v.perHour(func(r *sim.Record) int64 { return count(&r.Buffers[i]) })
	}
	b := &result.Beside{
		Kept:       of(func(r *sim.BufferRecord) int64 { return r.Kept }),
		GivenBack:  of(func(r *sim.BufferRecord) int64 { return r.GivenBack }),
		RanDry:     v.clockShare(func(r *sim.Record) sim.Micros { return r.Buffers[i].RanDry }),
		DryWindows: v.dryWindows(i),
	}
	if line.Kind == sim.HandMagazine {
		b.ByHand = of(func(r *sim.BufferRecord) int64 { return r.ByHand })
		people := float64(max(1, line.Hand.Crew.People))
		b.Minutes = v.count("hour", func(r *sim.Record) float64 {
			return people * float64(r.Buffers[i].HandTime) / float64(sim.Minute)
		})
	}
	if line.Returns.Share > 0 {
		b.Returned = of(func(r *sim.BufferRecord) int64 { return r.Returned })
	}
	return b
}

// dryWindows is the share of windows in which a place ran dry at all: a store beside the line
// when the exit lacked pieces, any other place when it was empty.
func (v view) dryWindows(i int) result.Estimate {
	beside := i < len(v.scenario.Line.Buffers) && v.scenario.Line.Buffers[i].Kind != sim.InLine
	hits := 0
	for k := range v.records {
		dry := v.records[k].Buffers[i].Empty
		if beside {
			dry = v.records[k].Buffers[i].RanDry
		}
		if dry > 0 {
			hits++
		}
	}
	return result.Estimate(estimate.Wilson(hits, len(v.records), v.confidence))
}

// storeStop is a stop of a store, by its place in the order of the record.
func (v view) storeStop(i, k int, name string, class sim.Class) result.Stop {
	return result.Stop{
		Name: name, Class: class.String(),
		PerHour: v.perHour(func(r *sim.Record) int64 { return r.Buffers[i].Stops[k].Count }),
		Down:    v.clockShare(func(r *sim.Record) sim.Micros { return stopped(&r.Buffers[i].Stops[k]) }),
	}
}
