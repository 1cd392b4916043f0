package sim_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tuckline/sim"
)

// figures writes a record as numbers by name: "packer cycles", "packer jam count",
// "buffer in", "fitters busy". Times are microseconds.
func figures(m *sim.Model, line sim.Line, rec *sim.Record) map[string]int64 {
	f := map[string]int64{"run ended": int64(rec.EndedAt), "run window": int64(rec.Window), "run scheduled": int64(rec.Scheduled)}
	for i := range rec.Stations {
		stationFigures(f, line.Stations[i].Name, m.StopNames(i), &rec.Stations[i])
		taskFigures(f, &line.Stations[i], &rec.Stations[i])
	}
	for i, p := range m.Places() {
		bufferFigures(f, p.Name, &rec.Buffers[i])
		for j := range rec.Buffers[i].Stops {
			stopFigures(f, p.Name, m.StoreStopNames(i)[j], &rec.Buffers[i].Stops[j])
		}
	}
	for i := range rec.Crews {
		c, r := line.Crews[i].Name, &rec.Crews[i]
		f[c+" busy"], f[c+" elsewhere"] = int64(r.Busy), int64(r.Elsewhere)
		f[c+" present"], f[c+" walking"], f[c+" overtime"] = int64(r.Present), int64(r.Walking), int64(r.Overtime)
		f[c+" requests"], f[c+" waited"], f[c+" wait time"] = r.Requests, r.Waited, int64(r.WaitTime)
	}
	return f
}

func stationFigures(f map[string]int64, name string, stops []string, r *sim.StationRecord) {
	f[name+" cycles"], f[name+" scrapped cycles"] = r.Cycles, r.ScrappedCycles
	f[name+" taken"], f[name+" given"], f[name+" passed"] = r.Taken, r.Given, r.Passed
	f[name+" rejected"], f[name+" scrapped"] = r.Rejected, r.Scrapped
	f[name+" in runs"], f[name+" lost"] = r.InRuns, r.Lost
	f[name+" part cycles"], f[name+" part short"], f[name+" part rejected"] = r.PartCycles, r.PartShort, r.PartRejected
	f[name+" part lost"], f[name+" part at first"], f[name+" part at last"] = r.PartLost, r.PartInside[0], r.PartInside[1]
	f[name+" no-reads"], f[name+" lost packs"], f[name+" mis-picked"] = r.NoReads, r.LostPacks, r.MisPicked
	f[name+" empty pockets"] = r.EmptyPockets
	f[name+" input at first"], f[name+" input at last"] = r.InputInside[0], r.InputInside[1]
	f[name+" output at first"], f[name+" output at last"] = r.OutputInside[0], r.OutputInside[1]
	for s := range sim.State(sim.NumStates) {
		f[name+" "+s.String()] = int64(r.States[s])
	}
	f[name+" holding"], f[name+" restarts"] = int64(r.Holding), r.Restarts
	f[name+" blocked spells"], f[name+" starved spells"] = r.BlockedSpells, r.StarvedSpells
	for j, stop := range stops {
		stopFigures(f, name, stop, &r.Stops[j])
	}
}

func stopFigures(f map[string]int64, name, stop string, s *sim.StopRecord) {
	f[name+" "+stop+" count"] = s.Count
	f[name+" "+stop+" waiting"], f[name+" "+stop+" down"] = int64(s.Waiting), int64(s.Down)
}

func bufferFigures(f map[string]int64, name string, r *sim.BufferRecord) {
	f[name+" in"], f[name+" out"], f[name+" max"] = r.In, r.Out, r.Max
	f[name+" at first"], f[name+" at last"] = r.Level[0], r.Level[1]
	f[name+" cleared"] = r.Cleared
	f[name+" level time"], f[name+" transit time"] = r.LevelTime, r.TransitTime
	f[name+" full"], f[name+" empty"] = int64(r.Full), int64(r.Empty)
	f[name+" kept"], f[name+" given back"], f[name+" dry"] = r.Kept, r.GivenBack, int64(r.RanDry)
	f[name+" by hand"], f[name+" returned"], f[name+" sensor stops"] = r.ByHand, r.Returned, r.SensorStops
}

// compareCounts compares figures with those computed by hand: entries "name:
// figure 3, figure 2 s" separated by semicolons or lines, # starts a comment.
func compareCounts(t *testing.T, got map[string]int64, want string) {
	t.Helper()
	for _, entry := range strings.FieldsFunc(strings.Join(plainLines(want), ";"), func(r rune) bool { return r == ';' }) {
		name, list, found := strings.Cut(entry, ":")
		if !found {
			t.Fatalf("no name in %q", entry)
		}
		for one := range strings.SplitSeq(list, ",") {
			words := strings.Fields(one)
			factor := 1.0
			if words[len(words)-1] == "s" {
				factor, words = 1e6, words[:len(words)-1]
			}
			value, err := strconv.ParseFloat(words[len(words)-1], 64)
			if err != nil {
				t.Fatal(err)
			}
			key := strings.TrimSpace(name) + " " + strings.Join(words[:len(words)-1], " ")
			has, known := got[key]
			if !known {
				t.Fatalf("there is no figure %q", key)
			}
			if expected := int64(math.Round(value * factor)); has != expected {
				t.Errorf("%s: by hand %d, by the engine %d", key, expected, has)
			}
		}
	}
}

// byName compares two records of the same line, declared in another order.
func byName(a, b map[string]int64) []string {
	var differ []string
	for key, value := range a {
		if other, has := b[key]; !has || other != value {
			differ = append(differ, key+": "+strconv.FormatInt(value, 10)+" and "+strconv.FormatInt(other, 10))
		}
	}
	if len(a) != len(b) {
		differ = append(differ, "the number of figures differs")
	}
	slices.Sort(differ)
	return differ
}
