package study

import (
	"cmp"
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// originKey is what spells of waiting go back to: the stop of a station, or one of the causes that are no stops.
type originKey struct{ station, cause int }

// origins say what began the blocked and starved spells of a station, the longest first; nil where
// the records do not say.
func (v view) origins(station int) []result.Origin {
	var all []result.Origin
	for _, key := range v.originKeys(station) {
		of := func(r *sim.Record) sim.Because {
			for _, one := range r.Stations[station].Because {
				if one.Station == key.station && one.Cause == key.cause {
					return one
				}
			}
			return sim.Because{}
		}
		name, cause := v.originWords(key)
		all = append(all, result.Origin{
			Station: name, Cause: cause,
			Blocked:              v.share(func(r *sim.Record) sim.Micros { return of(r).Blocked }),
			Starved:              v.share(func(r *sim.Record) sim.Micros { return of(r).Starved }),
			Overlap:              v.share(func(r *sim.Record) sim.Micros { return of(r).Overlap }),
			BlockedSpellsPerHour: v.perHour(func(r *sim.Record) int64 { return of(r).BlockedSpells }),
			StarvedSpellsPerHour: v.perHour(func(r *sim.Record) int64 { return of(r).StarvedSpells }),
		})
	}
	lost := func(o result.Origin) float64 { return o.Blocked.Mean + o.Starved.Mean }
	slices.SortStableFunc(all, func(a, b result.Origin) int { return cmp.Compare(lost(b), lost(a)) })
	return all
}

// originKeys are all that occur in any replication, in the order of the line.
func (v view) originKeys(station int) []originKey {
	var keys []originKey
	for i := range v.records {
		for _, one := range v.records[i].Stations[station].Because {
			if key := (originKey{one.Station, one.Cause}); !slices.Contains(keys, key) {
				keys = append(keys, key)
			}
		}
	}
	slices.SortFunc(keys, func(a, b originKey) int {
		return cmp.Or(cmp.Compare(a.station, b.station), cmp.Compare(a.cause, b.cause))
	})
	return keys
}

// originWords are the names of a cause: the station or store that it belongs to, and the stop
// or one of the words pace, rate, rejects, store, supply, outage, order.
func (v view) originWords(key originKey) (name, cause string) {
	line := v.scenario.Line
	switch {
	case key.station >= len(line.Stations) && key.station-len(line.Stations) < len(v.model.Places()):
		name = v.model.Places()[key.station-len(line.Stations)].Name
	case key.station >= 0 && key.station < len(line.Stations):
		name = line.Stations[key.station].Name
	}
	switch key.cause {
	case sim.CausePace:
		if key.station >= len(line.Stations) {
			return name, result.Rate
		}
		return name, result.Pace
	case sim.CauseRejects:
		return name, result.Rejects
	case sim.CauseStore:
		return name, result.Store
	case sim.CauseSupply:
		return name, result.Supply
	case sim.CauseOutage:
		return name, result.Outage
	case sim.CauseOrder:
		return name, result.Order
	}
	return name, v.model.StopNames(key.station)[key.cause]
}
