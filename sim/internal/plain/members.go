package plain

import "tuckline/sim/internal/plan"

// memberRejects notes at each member what it has rejected of a cycle.
func (e *Engine) memberRejects(s *station) {
	for i := range s.plan.Rejects {
		rec := &e.rec.Stations[s.plan.Members[s.plan.Rejects[i].Member].Declared]
		rejected := s.machine.Rejected(i)
		rec.Rejected += rejected.All
		rec.LostPacks += rejected.LostPacks
		rec.NoReads += rejected.NoReads
		rec.MisPicked += rejected.MisPicked
		rec.InRuns += rejected.InRuns
	}
}

// tellApart writes the record of a unit to its members: all have its states and cycles; the
// first takes the input and has the scrap, the last passes the output on, and what lies between goes
// through within the cycle.
func (e *Engine) tellApart(s *station) {
	members := s.plan.Members
	unit := s.rec
	made := unit.Cycles - unit.ScrappedCycles
	rejected := int64(0) // or sampled before the member, in its pieces: units do so only where one for one
	for m := range members {
		rec := &e.rec.Stations[members[m].Declared]
		before := *rec
		stops, own := before.Stops, before.Rejected
		*rec = plan.StationRecord{
			Waits: before.Waits, Sampled: before.Sampled, Materials: before.Materials, Checks: before.Checks,
			Cycles: made, Stops: stops, Rejected: own, States: unit.States, Restarts: unit.Restarts,
			LostPacks: before.LostPacks, NoReads: before.NoReads, MisPicked: before.MisPicked, InRuns: before.InRuns,
			BlockedSpells: unit.BlockedSpells, StarvedSpells: unit.StarvedSpells,
			Taken: made*members[m].Takes - rejected, Given: made*members[m].Gives - rejected,
		}
		rejected += own + before.Sampled
		rec.Passed = made*members[m].Gives - rejected
	}
	first, last := &e.rec.Stations[members[0].Declared], &e.rec.Stations[members[len(members)-1].Declared]
	first.Cycles, first.ScrappedCycles, first.Scrapped = unit.Cycles, unit.ScrappedCycles, unit.ScrappedCycles*members[0].Gives
	first.EmptyPockets = unit.EmptyPockets
	first.PartCycles, first.PartRejected = unit.PartCycles, unit.PartRejected
	first.PartShort, first.PartLost, first.PartInside = unit.PartShort, unit.PartLost, unit.PartInside
	first.Taken, first.Lost, first.InputInside = unit.Taken, unit.Lost, unit.InputInside
	last.Passed, last.OutputInside, last.Holding = unit.Passed, unit.OutputInside, unit.Holding
}
