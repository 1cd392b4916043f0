package report

import (
	"math"
	"slices"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/sim"
)

// An outcome with invented numbers, the same every time: what the words and
// drawings of a report are tried on.

type invented struct{ state uint64 }

// next is between 0 and 1.
func (v *invented) next() float64 {
	v.state = v.state*6364136223846793005 + 1442695040888963407
	return float64(v.state>>11) / (1 << 53)
}

func about(mean, half float64) result.Estimate {
	return result.Estimate{Mean: mean, Low: mean - half, High: mean + half, SD: half * 3.1, N: 40}
}

var inventedSource = `# An invented line
tuckline: 1
title: Fairholt, hall 1
question: What will the line deliver in a shift?
`

func inventedOutcome(stations ...string) *study.Outcome {
	if len(stations) == 0 {
		stations = []string{"blister machine", "cartoner", "print-and-check", "bundler", "case packer"}
	}
	s := inventedScenario(stations)
	o := &study.Outcome{Scenario: s, Constraint: stations[1]}
	v := &invented{1}
	for r := 1; r <= 40; r++ {
		o.Shifts = append(o.Shifts, math.Round(29640+(v.next()+v.next()+v.next()-1.5)*1400))
	}
	for n := 2; n <= 40; n++ {
		o.RunningMean = append(o.RunningMean, meanOf(o.Shifts[:n]))
	}
	o.Results = inventedResults(s, o.Shifts)
	o.Span = study.Span{
		Buffered: true, None: about(3411.2, 36), Now: about(3705, 30.4), Unlimited: about(3893.1, 28),
		Recovered: about(0.61, 0.031),
	}
	o.Causes = inventedCauses(stations)
	o.Classes = [][]float64{inventedClasses(0.02, 0.001), inventedClasses(0.11, 0.06), nil, nil, nil}
	o.Trace, o.TracedFrom, o.Traced = inventedTrace(v, len(stations)), 2*sim.Hour, 8*sim.Hour
	o.Records = inventedRecords(o)
	return o
}

func meanOf(values []float64) result.Estimate {
	mean, squares := 0.0, 0.0
	for _, x := range values {
		mean += x / float64(len(values))
	}
	for _, x := range values {
		squares += (x - mean) * (x - mean)
	}
	half := 2.1 * math.Sqrt(squares/float64(len(values)-1)/float64(len(values)))
	return about(mean, half)
}

func inventedScenario(stations []string) *scenario.Scenario {
	s := &scenario.Scenario{
		File: "fairholt.yaml", Source: []byte(inventedSource),
		Title: "Fairholt, hall 1", Question: "What will the line deliver in a shift?",
		Project: scenario.Project{Client: "Fairholt", Number: "F1-07", Revision: "B", Status: "draft"},
		Product: scenario.Product{Name: "ROWAN-20", Dose: "tablet", MassMilligrams: 250, DosesPerBlister: 10, BlistersPerCarton: 3},
		Answer:  scenario.Answer{Unit: "cartons", CountedAfter: []int{2}, Per: "shift"},
		Run:     scenario.Run{WarmUp: 2 * sim.Hour, Measure: 8 * sim.Hour, Replications: 40, Confidence: 0.95, Seed: 4711},
	}
	takes, gives := []int64{1, 3, 1, 10, 10}, []int64{4, 1, 1, 1, 1}
	cycle := []float64{1e6, 0.75e6, 6e7 / 110, 5e6, 4.8e7}
	units := []string{"pieces", "blisters", "cartons", "cartons", "bundles", "cases"}
	for i, name := range stations {
		s.Line.Stations = append(s.Line.Stations, sim.Station{
			Name: name, Takes: takes[i], Gives: gives[i], Cycle: sim.Fixed(cycle[i]),
			Stops: []sim.Stop{{Name: "minor stop", Every: sim.Fixed(1500), Lasts: sim.Fixed(9e7), Crew: sim.Work{Crew: "operators", People: 1}}},
		})
		unit := scenario.Station{TakesUnit: units[i], GivesUnit: units[i+1], SetCycle: cycle[i], TopCycle: cycle[i]}
		s.Stations = append(s.Stations, unit)
	}
	s.Stations[1].TopCycle = 0.6e6
	s.Line.Stations[0].RejectShare, s.Line.Stations[1].RejectShare = 0.008, 0.004
	s.Line.Buffers = []sim.Buffer{
		{Name: "transfer belt", From: []string{stations[0]}, Holds: 129, Transit: 20 * sim.Second, Conveyor: true},
		{Name: "transfer store", From: []string{"transfer belt"}, Holds: 720, Restart: sim.Level{On: true, Level: 504}},
	}
	s.Buffers = []scenario.Buffer{{Unit: "blisters"}, {Unit: "blisters"}}
	s.Line.Stations[1].From = "transfer store"
	for i := 2; i < len(stations); i++ {
		s.Line.Stations[i].From = stations[i-1]
	}
	s.Line.Crews = []sim.Crew{{Name: "operators", People: 3}}
	return s
}

func inventedResults(s *scenario.Scenario, shifts []float64) result.Results {
	sorted := slices.Sorted(slices.Values(shifts))
	total := meanOf(shifts)
	hour := result.Estimate{Mean: total.Mean / 8, Low: total.Low / 8, High: total.High / 8, SD: total.SD / 8, N: 40}
	r := result.Results{
		Format: 1, Title: s.Title, ScenarioHash: "5d0c1f0e9a7b4433", Seed: 4711, Replications: 40, Confidence: 0.95,
		MeasuredHours: 8, WarmUpHours: 2, Engine: "plain", EngineReason: "the only engine of this version",
		Output:   result.Output{Unit: "cartons", PerHour: hour, Total: total, ShiftP10: sorted[4], ShiftP50: sorted[20], ShiftP90: sorted[36]},
		Measures: []result.Measure{}, LossTrees: []result.LossTree{},
		Warnings: []string{"blister machine: the dwell of 0.38 s is outside the qualified range of 0.40 s to 0.60 s"},
		Ends:     map[string]int{"horizon": 40},
	}
	running := []float64{0.702, 0.772, 0.561, 0.512, 0.494}
	for i, station := range s.Line.Stations {
		r.Stations = append(r.Stations, inventedStation(station.Name, i, running[i]))
	}
	for i, name := range []string{"transfer belt", "transfer store"} {
		r.Buffers = append(r.Buffers, result.Buffer{
			Name: name, Capacity: []int64{129, 720}[i], Level: about(300*float64(i)+83, 9.3),
			Full: about(0.064, 0.008), Empty: about(0.112, 0.011), InTransit: about(64, 1.2),
		})
	}
	for i, name := range s.Line.Stations[1:4] {
		r.Buffers = append(r.Buffers, result.Buffer{
			Name: "hand-over before " + s.Line.Stations[i+2].Name, Capacity: 1,
			Level: about(0.1, 0.01), Full: about(0.1, 0.01), Empty: about(0.8, 0.01),
		})
		_ = name
	}
	r.Crews = []result.Crew{{Name: "operators", People: 3, Busy: about(0.143, 0.006), Minutes: about(25.74, 1.08), MeanWaitS: about(4.1, 0.7), Waited: about(0.05, 0.006)}}
	return r
}

func inventedStation(name string, at int, running float64) result.Station {
	states := result.States{Running: about(running, 0.0061), Down: about(0.139, 0.0057), Waiting: about(0.003, 0.0008)}
	rest := 1 - running - 0.142
	states.Starved, states.Blocked = about(rest*0.96, 0.0071), about(rest*0.04, 0.0009)
	if at == 0 {
		states.Starved, states.Blocked = result.Estimate{N: 40}, about(rest, 0.0071)
	}
	s := result.Station{
		Name: name, CyclesPerHour: about(3600*running/float64(at+1), 14), GivenPerHour: about(10100*running/float64(at+1), 41),
		RejectedPerHour: about(82/float64(at*at*at+1), 1.1), States: states, Holding: about(0.02, 0.001),
	}
	if at == 0 {
		s.ScrappedPerHour = about(61, 4)
	} else {
		s.ScrappedPerHour = result.Estimate{N: 40}
	}
	s.Pieces = result.Pieces{
		Made: about(s.GivenPerHour.Mean+s.ScrappedPerHour.Mean, 41), Good: about(s.GivenPerHour.Mean-s.RejectedPerHour.Mean, 41),
		Faulty: s.RejectedPerHour, Scrapped: s.ScrappedPerHour,
	}
	for k, stop := range []string{"minor stop", "breakdown", "forming foil"} {
		s.Stops = append(s.Stops, result.Stop{
			Name: stop, Class: []string{"minor", "breakdown", "material"}[k],
			PerHour: about([]float64{2.1, 0.11, 0.33}[k], 0.1/float64(k+1)), Down: about([]float64{0.073, 0.046, 0.021}[k]/float64(at+1), 0.004),
		})
	}
	return s
}

func inventedCauses(stations []string) []study.Cause {
	cause := func(kind result.LossKind, stop string, minutes float64) study.Cause {
		c := study.Cause{Kind: kind, Stop: stop, At: stations[1:2], Minutes: about(minutes, minutes/12), Pieces: about(minutes*80, minutes*80/12)}
		if stop != "" {
			c.Stations = stations[1:2]
		}
		return c
	}
	return []study.Cause{
		cause(result.LossStarved, "", 38.6), cause(result.LossStop, "minor stop", 33.9), cause(result.LossStop, "breakdown", 19.2), cause(result.LossBlocked, "", 1.1),
	}
}

func inventedClasses(empty, full float64) []float64 {
	classes := make([]float64, sim.LevelClasses)
	for k := range classes {
		classes[k] = (1 - empty - full) / float64(len(classes)) * (1 + 0.4*math.Sin(float64(k)/8))
	}
	classes[0], classes[len(classes)-1] = empty, full
	return classes
}

// inventedTrace moves every station between states and the store up and down.
func inventedTrace(v *invented, stations int) sim.Trace {
	var t sim.Trace
	end := 10 * sim.Hour
	for i := range stations {
		for at := sim.Micros(0); at < end; {
			t.States = append(t.States, sim.StateChange{At: at, Station: i, State: sim.Running, By: -1, Stop: -1})
			at += sim.Micros(v.next() * float64(12*sim.Minute))
			state := []sim.State{sim.Down, sim.Starved, sim.Blocked, sim.Waiting}[int(v.next()*4)]
			change := sim.StateChange{At: at, Station: i, State: state, By: -1, Stop: -1}
			begin := at
			t.States = append(t.States, change)
			at += sim.Micros(v.next() * float64(3*sim.Minute))
			if state == sim.Down || state == sim.Waiting {
				t.States[len(t.States)-1].By, t.States[len(t.States)-1].Stop = i, 0
				t.Stops = append(t.Stops, sim.StopSpell{Station: i, Begin: begin, Work: begin + (at-begin)/4, Done: at})
			}
		}
	}
	slices.SortStableFunc(t.States, func(a, b sim.StateChange) int { return int(a.At - b.At) })
	for b, capacity := range []float64{129, 720} {
		for at := sim.Micros(0); at < end; at += 10 * sim.Second {
			level := capacity / 2 * (1 + math.Sin(float64(at)/3e9)*0.9 + (v.next()-0.5)/10)
			t.Levels = append(t.Levels, sim.LevelChange{At: at, Buffer: b, Level: int64(level)})
		}
	}
	return t
}

func inventedRecords(o *study.Outcome) []sim.Record {
	records := make([]sim.Record, len(o.Shifts))
	for r := range records {
		records[r] = sim.Record{Replication: r + 1, Window: 8 * sim.Hour, EndedAt: 10 * sim.Hour, Events: 100000 + int64(r)}
		for i := range o.Results.Stations {
			passed := int64(o.Shifts[r]) * 3 / int64(1+2*min(i, 1))
			station := sim.StationRecord{Cycles: passed, Given: passed + 100, Rejected: 90, Scrapped: 10, Passed: passed}
			station.States[sim.Running] = 7*sim.Hour + sim.Micros(r)*sim.Second
			station.States[sim.Starved] = sim.Hour - sim.Micros(r)*sim.Second
			station.Stops = make([]sim.StopRecord, len(o.Results.Stations[i].Stops))
			for k := range station.Stops {
				station.Stops[k] = sim.StopRecord{Count: int64(k + r), Waiting: sim.Second, Down: sim.Minute}
			}
			records[r].Stations = append(records[r].Stations, station)
		}
		for range o.Results.Buffers {
			records[r].Buffers = append(records[r].Buffers, sim.BufferRecord{LevelTime: 300 * int64(8*sim.Hour), Full: sim.Minute, Empty: 2 * sim.Minute, Max: 720})
		}
		records[r].Crews = []sim.CrewRecord{{Busy: sim.Hour, Requests: 40, Waited: 2, WaitTime: sim.Minute}}
	}
	return records
}

var hostileNames = []string{
	`</script><script>document.title='RAN'</script>`,
	`"><img src=x onerror="document.title='RAN'">`,
	`{{.}} {b} fn:tip`,
	`colour:ink`,
	`'; } body { display: none } /*`,
}
