package study

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/sim"
)

// branches writes a tree as text, shares in thousandths of the window.
func branches(tree result.LossTree) []string {
	var all []string
	for _, b := range tree.Branches {
		text := fmt.Sprintf("%.1f %s", 1000*b.Share.Mean, b.Kind)
		if b.Cause != "" {
			text += fmt.Sprintf(": %s of %s", b.Cause, b.Station)
		}
		if b.Overlap.Mean > 0 {
			text += fmt.Sprintf(", overlap %.1f", 1000*b.Overlap.Mean)
		}
		all = append(all, text)
	}
	return all
}

// jamming is a line without chance in a window of 100 s: A and B work in 2 s, a place between them.
// A jams for 10 s after every 10 cycles, B for 7 s after every 13.
func jamming() *scenario.Scenario {
	s := steady()
	s.Run.WarmUp, s.Run.Measure = 0, 100*sim.Second
	for i := range s.Line.Stations {
		st := &s.Line.Stations[i]
		st.Takes, st.Gives, st.Cycle = 1, 1, sim.Fixed(2e6)
	}
	s.Line.Stations[0].Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(10), Lasts: sim.Fixed(10e6)}}
	s.Line.Stations[1].Stops = []sim.Stop{{Name: "jam", Every: sim.Fixed(13), Lasts: sim.Fixed(7e6)}}
	return s
}

// The trees of both stations by hand.
//
//	web       runs 0-20, jams 20-30, runs 30-38; at 38 the cartoner has done 13 cycles (2-22, 32-38) and jams with
//	          the fourteenth piece on it until 45, then works until 47: the web ends a cycle at 40 and is blocked 40-47,
//	          runs 47-55 (20 cycles), jams 55-65, runs 65-82, see the test of the engine for what follows
func TestLossTreeByHand(t *testing.T) {
	s := jamming()
	m, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	s.Run.Measure = 50 * sim.Second
	var records []sim.Record
	for range 2 {
		records = append(records, m.NewEngine().Run(sim.Options{Measure: s.Run.Measure, Attribute: true}))
	}
	v := viewOf(s, m, records)
	// The web: cycles end at 2 … 20 and 32 … 40, 49: 16. It is blocked from 40 to 47; the cycle 49-51 is cut at 50.
	want := []string{
		"640.0 good output", "20.0 slower than set speed", // 16 × 2 s; the second from 49 on has no end yet
		"200.0 stop: jam of web",
		"140.0 blocked: jam of cartoner",
	}
	if d := cmp.Diff(want, branches(v.lossTree(0))); d != "" {
		t.Error("web: ", d)
	}
	// The cartoner: starved 0-2, runs 2-22, starved 22-32, runs 32-38, down 38-45, runs 45-50: its cycles end at
	// 4 … 22, 34, 36, 38, 47, 49: 15 × 2 s and one second of the next.
	want = []string{
		"600.0 good output", "20.0 slower than set speed", "140.0 stop: jam of cartoner",
		"200.0 starved: jam of web", "40.0 starved: (pace) of web",
	}
	if d := cmp.Diff(want, branches(v.lossTree(1))); d != "" {
		t.Error("cartoner: ", d)
	}
}

// The branches of every replication sum to the window, to the microsecond, whatever the station has; the
// shares to 1.
func TestLossTreesClose(t *testing.T) {
	for name, s := range map[string]*scenario.Scenario{"jamming": jamming(), "stopping": stopping(t), "whole": wholeLine()} {
		m, err := sim.Compile(s.Line)
		if err != nil {
			t.Fatal(name, err)
		}
		v := viewOf(s, m, nil)
		e := m.NewEngine()
		for r := range 5 {
			o := sim.Options{Seed: 7, Replication: r, WarmUp: 10 * sim.Minute, Measure: 8 * sim.Hour, Attribute: true}
			v.records = append(v.records, e.Run(o))
		}
		for i := range s.Line.Stations {
			l := newLosing(s.Line, i)
			for r := range v.records {
				sum := sim.Micros(0)
				for _, one := range l.times(&v.records[r]) {
					sum += one.time
					if one.time < 0 {
						t.Errorf("%s, %s: %+v is less than nothing", name, s.Line.Stations[i].Name, one)
					}
					if one.named && one.overlap > one.time {
						t.Errorf("%s, %s: more overlap than time in %+v", name, s.Line.Stations[i].Name, one)
					}
				}
				if sum != v.records[r].Scheduled {
					t.Errorf("%s, %s: the branches sum to %d, the scheduled time is %d", name, s.Line.Stations[i].Name, sum, v.records[r].Scheduled)
				}
			}
			share := 0.0
			for _, b := range v.lossTree(i).Branches {
				share += b.Share.Mean
			}
			if math.Abs(share-1) > 1e-12 {
				t.Errorf("%s, %s: the shares sum to %v", name, s.Line.Stations[i].Name, share)
			}
		}
	}
}

// What pieces became is parted at set speed: rejects, samples and scrap of a record by hand.
func TestLossTreeOfPieces(t *testing.T) {
	s := steady()
	web := &s.Line.Stations[0] // 4 a cycle of 1 s
	m, err := sim.Compile(s.Line)
	if err != nil {
		t.Fatal(err)
	}
	rec := sim.Record{Window: 1000 * sim.Second, Scheduled: 950 * sim.Second, Stations: make([]sim.StationRecord, 2)}
	r := &rec.Stations[0]
	r.Cycles, r.ScrappedCycles, r.Rejected, r.Sampled, r.EmptyPockets = 800, 20, 40, 12, 5
	r.States[sim.Running], r.States[sim.Starved], r.States[sim.OffShift] = 850*sim.Second, 100*sim.Second, 50*sim.Second
	v := viewOf(s, m, []sim.Record{rec, rec})
	// 780 cycles not scrapped less 10 of rejects and 3 of samples; 850 less 767, 3, 10, 20 and 5 is slower.
	want := []string{
		// Thousandths of the 950 s of scheduled time; off shift stands apart.
		"807.4 good output", "3.2 samples", "10.5 rejects", "21.1 scrap", "5.3 empty pockets", "47.4 slower than set speed",
		"105.3 starved", // the record does not say because of what
	}
	if d := cmp.Diff(want, branches(v.lossTree(0))); d != "" {
		t.Error(web.Name, ": ", d)
	}
}
