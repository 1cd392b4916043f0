package keyfigure

import (
	"tuckline/internal/scenario"
	"tuckline/sim"
)

func lowmere() *scenario.Scenario {
	b := &build{}
	b.Title, b.Question = "Lowmere, hall 4", "How large must the store between blister machine and cartoner be?"
	line := sim.Station{
		Name: "blister machine", Takes: 1, Gives: 4, BlocksBefore: true, Ramp: 15 * sim.Second, RejectShare: 0.008,
		AfterStandstill: []sim.ScrapRule{{LongerThan: sim.Minute, Cycles: 8}},
		Stops:           stops(sim.CycleClock, 1500, 2, 0.9, 28800, 25),
	}
	people := scenario.Station{
		TakesUnit: "pieces", GivesUnit: "blisters", Web: scenario.Web{Width: 264_000, Index: 132_000, Across: 4, Along: 1},
		Forming: "thermoform", Sealing: scenario.Sealing{DwellShare: 0.45, DwellMin: 400_000, DwellMax: 600_000},
	}
	reel{"forming foil", 600, 250, 12, 132, 4}.add(&line, &people)
	reel{"lidding foil", 300, 27, 10, 132, 3.5}.add(&line, &people)
	stock(&line, &people, "hopper", "tablets", "tablets", 80000, 40, 68000, 12000, 2)
	b.station(line, people, 60, 0)
	b.belt("transfer belt", "blister machine", 8, 24, 62)
	b.store("transfer store", 720, "transfer belt")
	b.starts(20)
	b.cartoner(3, 0.004, stops(sim.PieceClock, 1000, 1.5, 0.8, 36000, 18), "transfer store",
		[]int64{2000, 500}, []int64{800, 300}, 80, 100)
	b.endOfLine(110, 115, 12, 10, 1.25, 10, 2500)
	return &b.Scenario
}

// tarnHollow is the line at 36/min with the cartoner at 72/min, or as proposed at 42 and 84.
func tarnHollow(perMinute, cartons float64) *scenario.Scenario {
	b := &build{}
	b.Title, b.Question = "Tarn Hollow, line TH-2", "What do 42 instead of 36 cycles a minute bring?"
	line := sim.Station{
		Name: "blister machine", Takes: 1, Gives: 4, BlocksBefore: true, RejectShare: 0.008,
		AfterStandstill: []sim.ScrapRule{{LongerThan: sim.Minute, Cycles: 6}},
		Stops:           stops(sim.CycleClock, 700, 1.6, 0.9, 14400, 20),
	}
	people := scenario.Station{
		TakesUnit: "pieces", GivesUnit: "blisters", Web: scenario.Web{Width: 300_000, Index: 192_000, Across: 2, Along: 2},
		Forming: "cold form", Sealing: scenario.Sealing{DwellShare: 0.45, DwellMin: 660_000, DwellMax: 950_000},
	}
	reel{"forming foil", 500, 137, 10, 192, 5}.add(&line, &people)
	reel{"lidding foil", 300, 27, 10, 192, 4}.add(&line, &people)
	stock(&line, &people, "hopper", "tablets", "tablets", 183333, 56, 173333, 10000, 2)
	b.station(line, people, perMinute, 0)
	b.belt("transfer belt", "blister machine", 6, 18, 96)
	b.store("transfer store", 720, "transfer belt")
	b.starts(10)
	b.cartoner(2, 0.005, stops(sim.PieceClock, 800, 1.3, 0.8, 27000, 15), "transfer store",
		[]int64{1200, 400}, []int64{800, 300}, cartons, 90)
	b.Line.Stations[len(b.Line.Stations)-1].Materials[0].MisPicks = sim.MisPicks{Share: 0.0005, Retries: 2}
	b.endOfLine(98, 102, 9, 12, 1.15, 8, 3000)
	b.Line.Crews[0].People = 4
	return &b.Scenario
}

func merged() *scenario.Scenario {
	b := &build{}
	b.Title = "Brackwater, hall 2 - two merged"
	for _, n := range []string{"1", "2"} {
		b.blister3("blister machine "+n, 3, 58, 1250, 1.8, 24000, 22)
		b.belt("branch "+n, "blister machine "+n, 10, 24, 58)
	}
	b.store("store", 1200, "branch 1", "branch 2")
	b.starts(10)
	b.brackwaterEnd()
	return &b.Scenario
}

func wide() *scenario.Scenario {
	b := &build{}
	b.Title = "Brackwater, hall 2 - one wide"
	b.blister3("blister machine", 6, 116, 900, 2, 21000, 28)
	b.belt("transfer belt", "blister machine", 7, 24, 58)
	b.store("store", 1200, "transfer belt")
	b.starts(10)
	b.brackwaterEnd()
	b.Line.Crews[0].People = 3
	return &b.Scenario
}

func (b *build) blister3(name string, gives int64, index, minor, minorLasts, breakdown, lasts float64) {
	line := sim.Station{
		Name: name, Takes: 1, Gives: gives, BlocksBefore: true, RejectShare: 0.008,
		AfterStandstill: []sim.ScrapRule{{LongerThan: sim.Minute, Cycles: 6}},
		Stops:           stops(sim.CycleClock, minor, minorLasts, 0.9, breakdown, lasts),
	}
	people := scenario.Station{
		TakesUnit: "pieces", GivesUnit: "blisters",
		Web:     scenario.Web{Width: 268_000, Index: sim.Micrometres(1e3 * index), Across: 3, Along: gives / 3},
		Sealing: scenario.Sealing{DwellShare: 0.45, DwellMin: 450_000, DwellMax: 700_000},
	}
	reel{"forming foil", 600, 250, 12, index, 4}.add(&line, &people)
	reel{"lidding foil", 300, 27, 10, index, 3.5}.add(&line, &people)
	stock(&line, &people, "hopper", "capsules", "capsules", 45000, 10*gives, 40000, 5000, 2)
	b.station(line, people, 50, 0)
}

func (b *build) brackwaterEnd() {
	b.cartoner(2, 0.004, stops(sim.PieceClock, 1400, 1.4, 0.8, 54000, 22), "store", []int64{4000, 1000}, []int64{1600, 600}, 150, 180)
	b.endOfLine(200, 200, 20, 10, 2, 10, 4000)
	b.Line.Crews[0].People = 4
}

// cartoner takes blisters from a store; blanks and leaflets are stock and alarm.
func (b *build) cartoner(takes int64, rejects float64, causes []sim.Stop, from string, blanks, leaflets []int64, set, top float64) {
	line := sim.Station{
		Name: "cartoner", From: from, Takes: takes, Gives: 1, RejectShare: rejects, Stops: causes,
		Steps: []sim.SpeedStep{{From: b.holds(from) / 2, BackAt: b.holds(from) * 2 / 5, Cycle: sim.Micros(minutes(1)/top + 0.5)}},
	}
	people := scenario.Station{TakesUnit: "blisters", GivesUnit: "cartons"}
	stock(&line, &people, "magazine", "carton blanks", "blanks", blanks[0], 1, 500, blanks[1], 0.7)
	stock(&line, &people, "magazine", "leaflets", "leaflets", leaflets[0], 1, 400, leaflets[1], 0.5)
	b.station(line, people, set, top)
}

// holds is how much a store of the line holds.
func (b *build) holds(name string) int64 {
	for _, buffer := range b.Line.Buffers {
		if buffer.Name == name {
			return buffer.Holds
		}
	}
	return 0
}
