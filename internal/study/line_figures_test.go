package study

import (
	"math"
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// wholeLine has a web with film and a leak test, a hand magazine beside the line, and a cartoner
// with a magazine of blanks that loses packs in every way. Figures are invented.
func wholeLine() *scenario.Scenario {
	s := steady()
	s.Answer.Per = "shift"
	people := sim.Work{Crew: "operators", People: 1, Priority: 5}
	web, cartoner := &s.Line.Stations[0], &s.Line.Stations[1]
	web.Runs = sim.RejectRuns{Enter: 0.0003, Share: 0.3, Length: 12}
	web.RejectShare, web.AfterStandstill = 0.01, []sim.ScrapRule{{LongerThan: sim.Minute, Cycles: 8}}
	web.Materials = []sim.Material{{Name: "film", Amount: 1e9, PerCycle: 132e3, Refill: 1e9, Web: true, Lasts: sim.Fixed(6e7), SpliceFails: 0.02}}
	web.Checks = []sim.Check{{Name: "leak test", Every: sim.Fixed(2.7e9), Clock: sim.RunningClock, Takes: 12, Lasts: sim.Fixed(1.8e8), Crew: people}}
	cartoner.From = "magazine"
	cartoner.NoReads, cartoner.LostPerStop = 0.003, 4
	cartoner.Materials = []sim.Material{{
		Name: "blanks", Amount: 2000, PerCycle: 1, Refill: 500, Lasts: sim.Fixed(4.2e7), Crew: people,
		Alarm: sim.Level{On: true, Level: 500}, MisPicks: sim.MisPicks{Share: 0.0005, Retries: 2},
	}}
	s.Stations[0].Materials = []scenario.Material{{Kind: "reel", Unit: "m", AlarmAt: -1}}
	s.Stations[1].Materials = []scenario.Material{{Kind: "magazine", Unit: "blanks", AlarmAt: 500}}
	s.Line.Buffers = []sim.Buffer{{
		Name: "magazine", From: []string{"web"}, Holds: 600, Kind: sim.HandMagazine,
		Hand: sim.Hand{PerPiece: sim.Minute / 100, Load: 30, Crew: people}, Returns: sim.Returns{Share: 0.5, Inspection: sim.Fixed(1.2e7), Crew: people},
	}}
	s.Buffers = []scenario.Buffer{{Unit: "blisters"}}
	s.Line.Crews = []sim.Crew{{Name: "operators", People: 2}}
	return s
}

// wholeRecords are two shifts of an hour, written by hand.
func wholeRecords(m *sim.Model) []sim.Record {
	records := make([]sim.Record, 2)
	for r := range records {
		n := int64(r)
		buffers := make([]sim.BufferRecord, len(m.Places()))
		buffers[0] = sim.BufferRecord{Kept: 300, GivenBack: 200, ByHand: 360 + 180*n, HandTime: sim.Minute * sim.Micros(4+2*n), Returned: 6, RanDry: sim.Micros(n) * 36 * sim.Second, Empty: 1}
		records[r] = sim.Record{
			Replication: r + 1, Window: sim.Hour,
			Stations: []sim.StationRecord{
				{
					Given: 10000, Rejected: 100, InRuns: 30, Sampled: 12, Scrapped: 32, Passed: 9888, Stops: make([]sim.StopRecord, len(m.StopNames(0))),
					Materials: []sim.MaterialRecord{{Used: 2508 * 132e3, Wasted: 8 * 132e3, FailedSplices: 2 * n}},
					Checks:    []sim.CheckRecord{{Count: 1 + n}},
				},
				{
					Given: 4850, Rejected: 50, NoReads: 15, LostPacks: 24, MisPicked: 11, Passed: 4800, Stops: make([]sim.StopRecord, len(m.StopNames(1))),
					Materials: []sim.MaterialRecord{{Used: 4920, Wasted: 20, Tasks: 10, Late: 4 * n, Lateness: sim.Micros(n) * 2 * sim.Minute, FailedPicks: 20}},
				},
			},
			Buffers: buffers,
			Crews:   []sim.CrewRecord{{Busy: 30 * sim.Minute}},
		}
	}
	return records
}

func wholeResults(t *testing.T, show ...string) result.Results {
	t.Helper()
	s := wholeLine()
	m, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	return Summarise(s, m, wholeRecords(m), show)
}

func near(t *testing.T, what string, got result.Estimate, want float64) {
	t.Helper()
	if math.Abs(got.Mean-want) > 1e-9*math.Max(1, want) || got.N == 0 {
		t.Errorf("%s: got %+v, want %v", what, got, want)
	}
}

// Where the pieces went, by hand from the records: they add up to what was made.
func TestPiecesAddUp(t *testing.T) {
	r := wholeResults(t)
	web, cartoner := r.Stations[0].Pieces, r.Stations[1].Pieces
	near(t, "made by the web", web.Made, 10032)
	near(t, "good", web.Good, 10000-100-12)
	near(t, "faulty", web.Faulty, 70)
	near(t, "in runs", web.InRuns, 30)
	near(t, "samples", web.Samples, 12)
	near(t, "scrapped", web.Scrapped, 32)
	near(t, "no-reads", cartoner.NoReads, 15)
	near(t, "lost packs", cartoner.LostPacks, 24)
	near(t, "mis-picked", cartoner.MisPicked, 11)
	near(t, "good cartons", cartoner.Good, 4800)
	near(t, "the sum", cartoner.Good, cartoner.Made.Mean-cartoner.NoReads.Mean-cartoner.LostPacks.Mean-cartoner.MisPicked.Mean)
	for what, absent := range map[string]result.Estimate{"web no-reads": web.NoReads, "web lost": web.LostPacks, "web mis-picked": web.MisPicked, "cartoner samples": cartoner.Samples, "cartoner faulty": cartoner.Faulty, "cartoner scrap": cartoner.Scrapped} {
		if absent != (result.Estimate{}) {
			t.Errorf("%s: %+v, but the line has none", what, absent)
		}
	}
}

// Materials by hand: 2,508 cycles of 132 mm are 331.056 m for 4,800 cartons.
func TestMaterialsByHand(t *testing.T) {
	r := wholeResults(t)
	film, blanks := r.Stations[0].Materials[0], r.Stations[1].Materials[0]
	if film.Unit != "m" || blanks.Unit != "blanks" || film.Tasks != nil || blanks.Tasks == nil {
		t.Fatalf("got %+v and %+v", film, blanks)
	}
	near(t, "film", film.UsedPerHour, 331.056)
	near(t, "film a carton", film.UsedPerAnswer, 331.056/4800)
	near(t, "film wasted", film.WastedPerAnswer, 1.056/4800)
	near(t, "failed splices", film.FailedSplicesPerHour, 1)
	near(t, "failed picks", blanks.FailedPicksPerHour, 20)
	near(t, "blanks a carton", blanks.UsedPerAnswer, 4920.0/4800)
	near(t, "refills", blanks.Tasks.PerHour, 10)
	near(t, "late", blanks.Tasks.Late, (0+0.4)/2)
	near(t, "late an hour", blanks.Tasks.LatePerHour, 2)
	// Only the second shift has late ones: 120 s for 4.
	near(t, "lateness", blanks.Tasks.MeanLatenessS, 30)
	if blanks.Tasks.MeanLatenessS.N != 1 || blanks.FailedSplicesPerHour.N != 0 {
		t.Errorf("got %+v", blanks)
	}
	near(t, "tests", r.Stations[0].Checks[0].PerHour, 1.5)
}

// A hand magazine by hand: 360 and 540 pieces took one person 4 and 6 minutes. It ran dry in
// one of two shifts; Wilson's 95 % interval of 1 in 2 is 9.45 to 90.55 % (formula of his paper
// with z = 1.96, by hand: centre 0.5, half 1.96/(2·√(2 + 1.96²))).
func TestHandMagazineByHand(t *testing.T) {
	b := wholeResults(t).Buffers[0].Beside
	near(t, "kept", b.Kept, 300)
	near(t, "given back", b.GivenBack, 200)
	near(t, "by hand", b.ByHand, 450)
	near(t, "minutes", b.Minutes, 5)
	near(t, "returned", b.Returned, 6)
	near(t, "dry", b.RanDry, 0.005)
	near(t, "dry shifts", b.DryWindows, 0.5)
	const half = 1.96 / (2 * 2.4166)
	if math.Abs(b.DryWindows.Low-(0.5-half)) > 1e-4 || math.Abs(b.DryWindows.High-(0.5+half)) > 1e-4 {
		t.Errorf("got %+v", b.DryWindows)
	}
}

// What is asked for, by its words, unit and per what.
func TestMeasuresOfTheWholeLine(t *testing.T) {
	asked := []string{
		"lost packs", "no-reads", "mis-picked", "samples", "late refills", "lateness of refills",
		"film used", "blanks wasted", "magazine runs dry", "carried by hand", "crew minutes",
	}
	got := map[string]result.Measure{}
	for _, m := range wholeResults(t, asked...).Measures {
		got[m.Name+", "+m.Of] = m
	}
	for name, want := range map[string]struct {
		value     float64
		per, unit string
	}{
		"lost packs, line":                        {24, "shift", "cartons"},
		"lost packs, cartoner":                    {24, "shift", "cartons"},
		"no-reads, cartoner":                      {15, "shift", "cartons"},
		"mis-picked, cartoner":                    {11, "shift", "cartons"},
		"samples, line":                           {6, "shift", "cartons"}, // 12 blisters, two a carton
		"samples, web":                            {12, "shift", "blisters"},
		"late refills, line":                      {2, "shift", ""},
		"late refills, blanks of cartoner":        {2, "shift", ""},
		"lateness of refills, blanks of cartoner": {30, "late refill, in seconds", ""},
		"film used, film":                         {331.056 / 4800, "good piece of the answer", "m"},
		"blanks wasted, blanks":                   {20.0 / 4800, "good piece of the answer", "blanks"},
		"magazine runs dry, magazine":             {0.5, "share of shifts", ""},
		"carried by hand, magazine":               {450, "shift", "blisters"},
		"crew minutes, operators":                 {30, "shift", "min"},
	} {
		m, found := got[name]
		if !found || m.Per != want.per || m.Unit != want.unit {
			t.Errorf("%s: got %+v, want %+v", name, m, want)
			continue
		}
		near(t, name, m.Value, want.value)
	}
}

// The words of a measure never name what the line has not, and a material of two stations is one.
func TestMaterialsAreNamedOnce(t *testing.T) {
	s := wholeLine()
	s.Line.Stations[0].Materials = append(s.Line.Stations[0].Materials, sim.Material{Name: "blanks", Amount: 1, PerCycle: 1, Refill: 1, Lasts: sim.Fixed(1)})
	s.Stations[0].Materials = append(s.Stations[0].Materials, scenario.Material{Unit: "blanks"})
	both, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	words := 0
	for _, one := range measuresOf(s, both) {
		if strings.HasSuffix(one.words, " used") {
			words++
		}
	}
	if words != 2 {
		t.Errorf("%d measures of use, want film and blanks", words)
	}
	m, err := sim.Compile(wholeLine().Line)
	if err != nil {
		t.Fatal(err)
	}
	records := wholeRecords(m)
	for i := range records {
		web := &records[i].Stations[0]
		web.Materials = append(web.Materials, sim.MaterialRecord{Used: 480})
	}
	rows := usedUp(viewOf(s, m, records), 1, "")
	if len(rows) != 1 || rows[0].Unit != "blanks" {
		t.Fatalf("got %+v", rows)
	}
	near(t, "blanks of both", rows[0].Value, (4920.0+480)/4800)
}
