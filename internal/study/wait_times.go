package study

import (
	"cmp"
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// waits are the times from the requests of a crew or a station to the beginning of the work; nil where nobody was asked for.
func (c columns) waits(of func(*sim.Record) *sim.Ages) *result.Waits {
	all := addUp(c.records, of)
	if all == nil || all.Count == 0 || slices.ContainsFunc(c.records, func(r sim.Record) bool { return of(&r) == nil }) {
		return nil
	}
	return &result.Waits{
		PerHour: c.perHour(func(r *sim.Record) int64 { return of(r).Count }),
		MeanS: c.over(func(r *sim.Record) float64 { return float64(of(r).Sum) / float64(sim.Second) },
			func(r *sim.Record) float64 { return float64(of(r).Count) }),
		P50S: c.waitNotExceeded(all, of, 0.50),
		P95S: c.waitNotExceeded(all, of, 0.95),
	}
}

// waitNotExceeded is a quantile of all waits of all replications, in seconds, which may depend on each other within one. Its interval
// goes from the quantile at the lower end to that at the upper end of the interval of the share of waits that do not exceed it,
// a ratio over replications (Woodruff, JASA 47 (1952) 635; from memory).
func (c columns) waitNotExceeded(all *sim.Ages, of func(*sim.Record) *sim.Ages, p float64) result.Estimate {
	class := classNotExceeded(all, p)
	below := c.over(func(r *sim.Record) float64 { return float64(upTo(of(r), class)) }, func(r *sim.Record) float64 { return float64(of(r).Count) })
	value := waitIn(all, class)
	e := result.Estimate{Mean: value, Low: value, High: value, N: below.N}
	if below.N < leastReplications {
		e.N = min(1, below.N)
		return e
	}
	half := (below.High - below.Low) / 2
	e.Low = min(value, waitIn(all, classNotExceeded(all, max(p-half, 0))))
	e.High = max(value, waitIn(all, classNotExceeded(all, min(p+half, 1))))
	return e
}

// classNotExceeded is the class of the value that a share of all do not exceed.
func classNotExceeded(a *sim.Ages, share float64) int {
	left, last := share*float64(a.Count), 0
	for class, n := range a.Classes {
		if n == 0 {
			continue
		}
		last = class
		if left -= float64(n); left <= 0 {
			break
		}
	}
	return last
}

// upTo counts the values of a class and those below it.
func upTo(a *sim.Ages, class int) (n int64) {
	for k := range min(class+1, len(a.Classes)) {
		n += a.Classes[k]
	}
	return n
}

// waitOf is the middle of a class in seconds, within 0.5 %; the first class is no wait at all.
func waitOf(class int) float64 {
	if class == 0 {
		return 0
	}
	return (sim.AgeLimit(class-1) + sim.AgeLimit(class)) / 2 / float64(sim.Second)
}

// waitIn is a wait of a class in seconds. A class that has half of all waits that are any has them at their mean: what the sum leaves
// for it when all others lie in the middle of theirs, within its limits. So waits that are always as long come out as they are.
func waitIn(all *sim.Ages, class int) float64 {
	if class == 0 || class >= len(all.Classes) {
		return waitOf(class)
	}
	n := all.Classes[class]
	if n == 0 || 2*n < all.Count-all.Classes[0] {
		return waitOf(class)
	}
	rest := float64(all.Sum) / float64(sim.Second)
	for other, many := range all.Classes {
		if other != class {
			rest -= float64(many) * waitOf(other)
		}
	}
	low, high := sim.AgeLimit(class-1)/float64(sim.Second), sim.AgeLimit(class)/float64(sim.Second)
	return min(max(rest/float64(n), low), high)
}

// addUp are the times of all replications together; nil where no record has any.
func addUp(records []sim.Record, of func(*sim.Record) *sim.Ages) *sim.Ages {
	var all *sim.Ages
	for i := range records {
		one := of(&records[i])
		if one == nil {
			continue
		}
		if all == nil {
			all = &sim.Ages{}
		}
		all.Count += one.Count
		all.Sum += one.Sum
		for class, n := range one.Classes {
			for len(all.Classes) <= class {
				all.Classes = append(all.Classes, 0)
			}
			all.Classes[class] += n
		}
	}
	return all
}

// waitsFor are the crews for which a station stands and waits because of its own stops, the longest first: who stops with it is not
// short of people.
func (v view) waitsFor(station int) []result.WaitsFor {
	var all []result.WaitsFor
	for _, crew := range v.scenario.Line.Crews {
		one := result.WaitsFor{Crew: crew.Name, Share: v.share(func(r *sim.Record) (sum sim.Micros) {
			for _, by := range r.Stations[station].StoppedBy {
				if by.Station == station && v.askedFor(station, by.Cause) == crew.Name {
					sum += by.Waiting
				}
			}
			return sum
		})}
		if one.Share.Mean > 0 {
			all = append(all, one)
		}
	}
	slices.SortStableFunc(all, func(a, b result.WaitsFor) int { return cmp.Compare(b.Share.Mean, a.Share.Mean) })
	return all
}

// askedFor is the crew that a stop of a station asks for.
func (v view) askedFor(station, cause int) string {
	if station < 0 || station >= len(v.stopCrews) || cause < 0 {
		return ""
	}
	return v.stopCrews[station][cause]
}

// waitRows are mean, P50 and P95 of waits as measures.
func waitRows(of string, w *result.Waits) []result.Measure {
	if w == nil {
		w = &result.Waits{}
	}
	return slices.Concat(one(of+", mean", w.MeanS), one(of+", P50", w.P50S), one(of+", P95", w.P95S))
}

// waiting are the waits for people: of each crew, then of each station that asks for people.
func waiting(v view, _ int, _ string) []result.Measure {
	var rows []result.Measure
	for i, crew := range v.scenario.Line.Crews {
		rows = append(rows, waitRows(crew.Name, v.waits(crewWaits(i)))...)
	}
	for i := range v.scenario.Line.Stations {
		if w := v.waits(stationWaits(i)); w != nil {
			rows = append(rows, waitRows(v.scenario.Line.Stations[i].Name, w)...)
		}
	}
	return rows
}

func crewWaits(i int) func(*sim.Record) *sim.Ages {
	return func(r *sim.Record) *sim.Ages { return r.Crews[i].Waits }
}

func stationWaits(i int) func(*sim.Record) *sim.Ages {
	return func(r *sim.Record) *sim.Ages { return r.Stations[i].Waits }
}
