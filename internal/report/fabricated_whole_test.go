package report

import (
	"math"
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/sim"
)

// inventedWhole is the invented line with everything that a whole line may have.
func inventedWhole() *study.Outcome {
	o := inventedOutcome()
	inventedParts(o.Scenario)
	r := &o.Results
	web, cartoner, print := &r.Stations[0], &r.Stations[1], &r.Stations[2]
	web.Pieces.Made = about(web.Pieces.Made.Mean+16, 41)
	web.Pieces.Samples = about(16, 0.2)
	web.Pieces.Faulty, web.Pieces.InRuns = about(55, 0.9), about(27, 2.1) // 82 in all
	web.Checks = []result.Check{{Name: "leak test", PerHour: about(1.33, 0.02)}}
	web.Materials = []result.Material{
		inventedMaterial("forming foil", "m", 471, 5.1, nil),
		inventedMaterial("lidding foil", "m", 471, 5.1, inventedTasks(0.43, 0.08, 34)),
	}
	web.Materials[1].FailedSplicesPerHour = about(0.009, 0.002)
	cartoner.Pieces.Made = about(cartoner.Pieces.Made.Mean+3.9, 41)
	cartoner.Pieces.MisPicked = about(3.9, 0.3)
	cartoner.EmptyPocketsPerHour = about(41, 5)
	cartoner.Materials = []result.Material{
		inventedMaterial("carton blanks", "blanks", 3760, 4.2, inventedTasks(7.5, 0.011, 21)),
		inventedMaterial("leaflets", "leaflets", 3748, 0, inventedTasks(9.4, 0.034, 18)),
	}
	cartoner.Materials[0].FailedPicksPerHour = about(4.2, 0.3)
	print.Pieces.Made = about(print.Pieces.Made.Mean+31.5, 41)
	print.Pieces.NoReads, print.Pieces.LostPacks = about(11.3, 0.4), about(20.2, 1.1)
	r.Buffers[0].SensorStopsPerHour = about(6.2, 0.5)
	r.Buffers[1].Beside = &result.Beside{
		Kept: about(912, 40), GivenBack: about(905, 40), ByHand: about(1817, 77), Minutes: about(20.2, 0.9), Returned: about(41, 2.2),
		RanDry: about(0.013, 0.003), DryWindows: result.Estimate{Mean: 0.35, Low: 0.221, High: 0.505, N: 40},
	}
	origin := func(station, cause string, starved, blocked float64) result.Origin {
		return result.Origin{
			Station: station, Cause: cause, Starved: about(starved, starved/9), Blocked: about(blocked, blocked/9), Overlap: about(starved/20, starved/80),
			StarvedSpellsPerHour: about(starved*40, starved*4), BlockedSpellsPerHour: about(blocked*90, blocked*9),
		}
	}
	cartoner.Origins = []result.Origin{
		origin("blister machine", "breakdown", 0.031, 0), origin("blister machine", "minor stop", 0.024, 0), origin("blister machine", result.Rejects, 0.004, 0),
		origin("transfer store", result.Store, 0.002, 0), origin("print-and-check", "minor stop", 0, 0.003), origin("blister machine", "lidding foil", 0.0011, 0),
	}
	web.Origins = []result.Origin{origin("cartoner", "breakdown", 0, 0.09), origin("cartoner", result.Pace, 0, 0.02)}
	branch := func(kind result.LossKind, station, cause string, share float64) result.LossBranch {
		return result.LossBranch{Kind: kind, Station: station, Cause: cause, Share: about(share, math.Abs(share)/9)}
	}
	blisters := result.LossTree{Station: "blister machine", Branches: []result.LossBranch{
		branch(result.LossGood, "", "", 0.68), branch(result.LossScrap, "", "", 0.014), branch(result.LossSlower, "", "", 0.008),
		branch(result.LossStop, "blister machine", "minor stop", 0.142), branch(result.LossBlocked, "cartoner", "breakdown", 0.156),
	}}
	r.LossTrees = []result.LossTree{blisters, {Station: "cartoner", Branches: []result.LossBranch{
		branch(result.LossGood, "", "", 0.79), branch(result.LossRejects, "", "", 0.009), branch(result.LossPockets, "", "", 0.008), branch(result.LossSlower, "", "", -0.035),
		branch(result.LossStop, "cartoner", "minor stop", 0.092), branch(result.LossStop, "cartoner", "breakdown", 0.046), branch(result.LossStop, "cartoner", "leaflets", 0.001),
		branch(result.LossWaiting, "cartoner", "minor stop", 0.003), branch(result.LossBlocked, "print-and-check", "minor stop", 0.003),
		branch(result.LossStarved, "blister machine", "breakdown", 0.044), branch(result.LossStarved, "blister machine", "minor stop", 0.031), branch(result.LossStarved, "blister machine", result.Rejects, 0.0065),
		branch(result.LossStarved, "transfer store", result.Store, 0.0008), branch(result.LossStarved, "blister machine", "lidding foil", 0.0007),
	}}}
	for i := range o.Records {
		inventedRecord(&o.Records[i], int64(i))
	}
	return o
}

// inventedParts writes into the scenario what the figures speak of.
func inventedParts(s *scenario.Scenario) {
	people := sim.Work{Crew: "operators", People: 1, Priority: 5}
	half := sim.Fixed(0.5 * float64(sim.Minute))
	web, cartoner, print := &s.Line.Stations[0], &s.Line.Stations[1], &s.Line.Stations[2]
	web.HeatRecovery = 20 * sim.Second
	web.Runs = sim.RejectRuns{Enter: 0.0003, Share: 0.3, Length: 12}
	web.RejectsAfter, web.RejectStop = 8, sim.RejectStop{After: 3, Lasts: sim.Fixed(6e7), Crew: people}
	web.AfterStandstill = []sim.ScrapRule{{LongerThan: sim.Minute, Cycles: 8}}
	web.Checks = []sim.Check{{Name: "leak test", Every: sim.Fixed(45 * float64(sim.Minute)), Clock: sim.RunningClock, Takes: 12, Lasts: sim.Fixed(1.8e8), Crew: people}}
	web.Materials = []sim.Material{
		{Name: "forming foil", Amount: 1_106_000_000, PerCycle: 132_000, Refill: 1_106_000_000, Lasts: sim.Fixed(2.4e8), Crew: people, Web: true, PartUsed: true},
		{
			Name: "lidding foil", Amount: 1_090_000_000, PerCycle: 132_000, Refill: 1_090_000_000, Lasts: sim.Fixed(4e7), Crew: people, Web: true,
			Store: sim.WebStore{On: true, Length: 8_000_000, Refill: 1.3}, SpliceScrap: 8, SpliceFails: 0.02,
		},
	}
	cartoner.Stops[0].Lasts = sim.Fixed(1.5e8) // so that it is the cartoner that limits the line
	cartoner.EmptyPockets = sim.EmptyPockets{On: true, Most: 5}
	cartoner.Materials = []sim.Material{
		{
			Name: "carton blanks", Amount: 2000, PerCycle: 1, Refill: 500, Lasts: half, Crew: people, Alarm: sim.Level{On: true, Level: 500},
			MisPicks: sim.MisPicks{Share: 0.0005, Retries: 2, Stops: true, Lasts: half, Crew: people},
		},
		{Name: "leaflets", Amount: 800, PerCycle: 1, Refill: 400, Lasts: half, Crew: people, Alarm: sim.Level{On: true, Level: 300}},
	}
	print.NoReads, print.LostPerStop = 0.003, 4
	s.Stations[0].Materials = []scenario.Material{
		{Kind: "reel", Unit: "m", AlarmAt: -1, Outer: 600_000, Core: 76_000, Thickness: 250, Unusable: 12_000_000}, {Kind: "reel", Unit: "m", AlarmAt: -1},
	}
	s.Stations[1].Materials = []scenario.Material{{Kind: "magazine", Unit: "blanks", AlarmAt: 500}, {Kind: "magazine", Unit: "leaflets", AlarmAt: 300}}
	belt, store := &s.Line.Buffers[0], &s.Line.Buffers[1]
	belt.Full, belt.Clear = sim.Sensor{On: true, At: 48, Delay: 2 * sim.Second}, sim.Sensor{On: true, At: 16, Delay: 2 * sim.Second}
	store.Kind, store.LastIn, store.Restart, store.AtStart = sim.HandMagazine, true, sim.Level{}, 600
	store.Hand = sim.Hand{PerPiece: sim.Minute / 90, Load: 30, Crew: people}
	store.Returns = sim.Returns{Share: 0.5, Inspection: sim.Fixed(1.2e7), Crew: people}
}

func inventedMaterial(name, unit string, used, wasted float64, tasks *result.Tasks) result.Material {
	return result.Material{
		Name: name, Unit: unit, UsedPerHour: about(used, used/200), WastedPerHour: about(wasted, wasted/9),
		UsedPerAnswer: about(used/3702, used/3702/400), WastedPerAnswer: about(wasted/3702, wasted/3702/9), Tasks: tasks,
	}
}

func inventedTasks(perHour, late, seconds float64) *result.Tasks {
	return &result.Tasks{
		PerHour: about(perHour, perHour/50), Late: about(late, late/5), LatePerHour: about(perHour*late, perHour*late/5), MeanLatenessS: about(seconds, seconds/8),
	}
}

// inventedRecord has counts for all that is invented.
func inventedRecord(r *sim.Record, n int64) {
	web, cartoner, print := &r.Stations[0], &r.Stations[1], &r.Stations[2]
	web.InRuns, web.Sampled, web.Checks = 30, 132, []sim.CheckRecord{{Count: 11}}
	web.Materials = []sim.MaterialRecord{{Used: 3_768_000_000 + n, Wasted: 40_800_000}, {Used: 3_768_000_000, Wasted: 40_800_000, Tasks: 3, Late: n % 2, Lateness: sim.Micros(n%2) * 34 * sim.Second, FailedSplices: 1}}
	cartoner.MisPicked, cartoner.EmptyPockets = 31, 330
	cartoner.Materials = []sim.MaterialRecord{{Used: 30_080, Wasted: 34, Tasks: 60, Late: 1, Lateness: 21 * sim.Second, FailedPicks: 34}, {Used: 29_980, Tasks: 75, Late: 3, Lateness: 54 * sim.Second}}
	print.NoReads, print.LostPacks = 90, 160
	r.Buffers[0].SensorStops = 50
	store := &r.Buffers[1]
	store.Kept, store.GivenBack, store.ByHand, store.Returned, store.RanDry = 7300, 7240, 14_540, 330, 374*sim.Second
	store.HandTime = 161 * sim.Minute
}

// The invented lines are lines that could be run.
func TestInventedLinesCompile(t *testing.T) {
	for name, o := range map[string]*study.Outcome{"plain": inventedOutcome(), "whole": inventedWhole()} {
		if _, err := sim.Compile(o.Scenario.Line); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A store beside the line with stops of its own: they stand among the stops of stations, and have columns.
func TestStopsOfAStore(t *testing.T) {
	o := inventedWhole()
	o.Results.Buffers[1].Stops = []result.Stop{{Name: "lift jams", Class: "minor", PerHour: about(0.2, 0.03), Down: about(0.2, 0.01)}}
	for i := range o.Records {
		o.Records[i].Buffers[1].Stops = []sim.StopRecord{{Count: 2, Down: sim.Minute, Waiting: sim.Second}}
	}
	says(t, wordsOf(t, Page{Outcome: o}), "The lift jams of transfer store takes 96.0 min per shift, more than any other stop", "lift jams transfer store minor 96.0")
	var rows strings.Builder
	if err := ReplicationsCSV(&rows, o); err != nil {
		t.Fatal(err)
	}
	says(t, rows.String(), "transfer store: stops of lift jams,transfer store: lift jams_s,", ",14540,9660,330,2,61,")
}
