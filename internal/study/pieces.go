package study

import (
	"slices"

	"tuckline/internal/result"
	"tuckline/sim"
)

// pieces says where the pieces of the cycles of a station went.
func (c columns) pieces(line *sim.Station, station int) result.Pieces {
	of := func(has bool, count func(*sim.StationRecord) int64) result.Estimate {
		if !has {
			return result.Estimate{}
		}
		return c.perHour(func(r *sim.Record) int64 { return count(&r.Stations[station]) })
	}
	return result.Pieces{
		Made:      of(true, made),
		Good:      of(true, goodGiven),
		Faulty:    of(findsFaults(line), faulty),
		InRuns:    of(line.Runs.Enter > 0, inRuns),
		NoReads:   of(line.NoReads > 0, noReads),
		LostPacks: of(line.LostPerStop > 0, lostPacks),
		MisPicked: of(mayMisPick(line), misPicked),
		Samples:   of(len(line.Checks) > 0, sampled),
		Scrapped:  of(mayScrap(line), scrapped),
	}
}

// findsFaults says that a station rejects pieces for what they are.
func findsFaults(line *sim.Station) bool { return line.RejectShare > 0 || line.Runs.Enter > 0 }

// mayScrap says that a rule of the station throws cycles away.
func mayScrap(line *sim.Station) bool {
	if len(line.AfterStop) > 0 || len(line.AfterStandstill) > 0 {
		return true
	}
	return slices.ContainsFunc(line.Materials, func(m sim.Material) bool { return m.SpliceScrap > 0 })
}

// mayMisPick says that a picker of the station can miss.
func mayMisPick(line *sim.Station) bool {
	return slices.ContainsFunc(line.Materials, func(m sim.Material) bool { return m.MisPicks.Share > 0 })
}

// made are the pieces of all cycles; what follows adds up to it.
func made(r *sim.StationRecord) int64 { return r.Given + r.Scrapped }

func goodGiven(r *sim.StationRecord) int64 { return r.Given - r.Rejected - r.Sampled }
func inRuns(r *sim.StationRecord) int64    { return r.InRuns }

// faulty are rejects that nothing else explains.
func faulty(r *sim.StationRecord) int64 {
	return r.Rejected - r.InRuns - r.NoReads - r.LostPacks - r.MisPicked
}

func noReads(r *sim.StationRecord) int64   { return r.NoReads }
func lostPacks(r *sim.StationRecord) int64 { return r.LostPacks }
func misPicked(r *sim.StationRecord) int64 { return r.MisPicked }
func sampled(r *sim.StationRecord) int64   { return r.Sampled }
func rejected(r *sim.StationRecord) int64  { return r.Rejected }
func scrapped(r *sim.StationRecord) int64  { return r.Scrapped }
