package study

import (
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// lost is a count of pieces at a station, in pieces that it gives.
type lost func(*sim.StationRecord) int64

// losing is the measure of one kind of loss.
func losing(loss lost) func(view, int, string) []result.Measure {
	return func(v view, _ int, per string) []result.Measure { return v.losses(per, loss) }
}

// losses is the loss of the line in pieces of the answer, then of each station that loses any.
func (v view) losses(per string, loss lost) []result.Measure {
	rows := one("line", v.count(per, v.lineLoss(loss)))
	rows[0].Unit = v.scenario.Answer.Unit
	for i, station := range v.scenario.Line.Stations {
		value := v.count(per, func(r *sim.Record) float64 { return float64(loss(&r.Stations[i])) })
		if value.Mean > 0 {
			rows = append(rows, result.Measure{Of: station.Name, Value: value, Unit: v.scenario.Stations[i].GivesUnit})
		}
	}
	return rows
}

// lineLoss sums a loss over the stations up to the counts of the answer, in pieces of the
// answer: a piece counts as the share of an answer piece that it would have become. Every
// input of an assembly counts, so that a blister and a leaflet lost are two losses even
// if they would have met in one carton.
func (v view) lineLoss(loss lost) func(*sim.Record) float64 {
	return v.lineLossOf(func(r *sim.StationRecord, _ int) float64 { return float64(loss(r)) })
}

// lineLossOf is lineLoss of what a station loses, in its pieces.
func (v view) lineLossOf(loss func(*sim.StationRecord, int) float64) func(*sim.Record) float64 {
	line := v.scenario.Line
	var counted []string
	for _, at := range v.scenario.Answer.CountedAfter {
		counted = append(counted, upstream(line, line.Stations[at].Name)...)
	}
	return func(r *sim.Record) float64 {
		sum := 0.0
		for i := range line.Stations {
			if slices.Contains(counted, line.Stations[i].Name) {
				sum += loss(&r.Stations[i], i) * v.figures.Stations[i].PerPiece
			}
		}
		return sum
	}
}

// rejects are the pieces that stations reject, and the part inputs that they reject at the ends of orders: these in the pieces of
// their input.
func rejects(v view, _ int, per string) []result.Measure {
	rows, part := v.losses(per, rejected), v.partLoss()
	whole := v.lineLoss(rejected)
	rows[0].Value = v.count(per, func(r *sim.Record) float64 { return whole(r) + part(r) })
	for i, station := range v.scenario.Line.Stations {
		value := v.count(per, func(r *sim.Record) float64 { return float64(r.Stations[i].PartRejected) })
		if value.Mean > 0 {
			rows = append(rows, result.Measure{Of: station.Name + ", part input at the end of an order", Value: value, Unit: v.scenario.Stations[i].TakesUnit})
		}
	}
	return rows
}

// partLoss sums the part inputs that stations up to the counts of the answer reject at the ends of orders, in pieces of the answer:
// what a cycle gives is worth what it takes in.
func (v view) partLoss() func(*sim.Record) float64 {
	worth := make([]float64, len(v.scenario.Line.Stations))
	for i, station := range v.scenario.Line.Stations {
		worth[i] = float64(station.Gives) / float64(max(1, station.Takes))
	}
	return v.lineLossOf(func(r *sim.StationRecord, i int) float64 { return float64(r.PartRejected) * worth[i] })
}

// yield is the good pieces of the good, rejected and scrapped ones, part inputs rejected at the ends of orders included, all in
// pieces of the answer, 0 to 1.
// Behind an assembly that is at most the least yield of its inputs, each taken alone.
func yield(v view, _ int, _ string) []result.Measure {
	good, reject, scrap, part := total(v.scenario), v.lineLoss(rejected), v.lineLoss(scrapped), v.partLoss()
	return one("line", v.ratio(good, func(r *sim.Record) float64 { return good(r) + reject(r) + scrap(r) + part(r) }))
}

// lineEfficiency is good pieces over set speed times measured time, the set
// speed being what the line would make if nothing ever stopped: that of the
// slowest step (common practice, no source).
func lineEfficiency(v view, _ int, _ string) []result.Measure {
	perMinute := v.figures.Bounds.AtSet
	return one("line", v.over(total(v.scenario), func(r *sim.Record) float64 {
		return perMinute * scheduled(r) / float64(sim.Minute)
	}))
}
