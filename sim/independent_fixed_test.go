//go:build proof

package sim_test

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"path/filepath"
	"testing"

	"tuckline/sim"
)

// fixedCases is how many courses without chance are compared.
const fixedCases = 20

// TestIndependentCourses holds both implementations to the same microsecond where nothing is random: every
// cause has one age and one length, drawn anew for each case.
func TestIndependentCourses(t *testing.T) {
	python := pythonWithSimPy(t)
	for _, l := range []independentLine{
		{name: "reference", file: filepath.Join("testdata", "reference-line.yaml"), counted: "packer"},
		{name: "lowmere", file: filepath.Join("scenarios", "lowmere.yaml"), counted: "tamper label"},
	} {
		t.Run(l.name, func(t *testing.T) {
			read := l.read(t)
			rng := rand.New(rand.NewPCG(seedOf(l.name), 1))
			var input bytes.Buffer
			var records []sim.Record
			for range fixedCases {
				line := certain(read.Line)
				causes := fixCauses(line, rng)
				if err := json.NewEncoder(&input).Encode(causes); err != nil {
					t.Fatal(err)
				}
				rec := compile(t, line).NewEngine().Run(sim.Options{WarmUp: read.Run.WarmUp, Measure: read.Run.Measure})
				records = append(records, rec)
			}
			models := json.NewDecoder(bytes.NewReader(modelOutput(t, python, input.Bytes(), l.name, "fixed")))
			for k := range records {
				var model modelRecord
				if err := models.Decode(&model); err != nil {
					t.Fatal(err)
				}
				l.sameCourse(t, k, read.Line, &records[k], &model)
			}
		})
	}
}

// certain takes rejects, part-used reels and other work away.
func certain(line sim.Line) sim.Line {
	line.Stations, line.Crews = append([]sim.Station(nil), line.Stations...), append([]sim.Crew(nil), line.Crews...)
	for i := range line.Stations {
		st := &line.Stations[i]
		st.RejectShare = 0
		st.Stops = append([]sim.Stop(nil), st.Stops...)
		st.Materials = append([]sim.Material(nil), st.Materials...)
		for j := range st.Materials {
			st.Materials[j].PartUsed = false
		}
	}
	for i := range line.Crews {
		line.Crews[i].ElsewhereShare = 0
	}
	return line
}

// fixCauses gives every cause an age and a length between half and one and a half of their means; an age in
// millionths of a cycle or in microseconds of running.
func fixCauses(line sim.Line, rng *rand.Rand) map[string]map[string][2]int64 {
	about := func(mean float64) int64 { return int64(mean * (0.5 + rng.Float64())) }
	causes := map[string]map[string][2]int64{}
	for i := range line.Stations {
		st := &line.Stations[i]
		of := map[string][2]int64{}
		for j := range st.Stops {
			stop := &st.Stops[j]
			lasts := about(stop.Lasts.Mean())
			stop.Lasts = sim.Fixed(float64(lasts))
			every := int64(0)
			if stop.Clock == sim.RunningClock {
				every = about(stop.Every.Mean())
				stop.Every = sim.Fixed(float64(every))
			} else {
				every = about(stop.Every.Mean() * 1e6)
				stop.Every = sim.Fixed(float64(every) / 1e6)
			}
			of[stop.Name] = [2]int64{every, lasts}
		}
		for j := range st.Materials {
			m := &st.Materials[j]
			lasts := about(m.Lasts.Mean())
			m.Lasts = sim.Fixed(float64(lasts))
			of[m.Name] = [2]int64{0, lasts}
		}
		causes[st.Name] = of
	}
	return causes
}

// sameCourse compares output, states and stops, without any allowance.
func (l *independentLine) sameCourse(t *testing.T, k int, line sim.Line, rec *sim.Record, model *modelRecord) {
	t.Helper()
	words := map[sim.State]string{sim.Waiting: "waiting", sim.Down: "down", sim.Blocked: "blocked", sim.Starved: "starved", sim.Running: "running"}
	m := compile(t, line)
	for i, st := range rec.Stations {
		name := line.Stations[i].Name
		if name == l.counted && float64(st.Passed) != model.Output {
			t.Errorf("case %d: output %d here, %.0f there", k, st.Passed, model.Output)
		}
		for state, word := range words {
			if here, there := int64(st.States[state]), int64(model.States[name][word]); here != there {
				t.Errorf("case %d: %s %s %d µs here, %d there", k, name, word, here, there)
			}
		}
		for j, stop := range m.StopNames(i) {
			if here, there := st.Stops[j].Count, int64(model.Stops[name][stop]); here != there {
				t.Errorf("case %d: %s %s %d times here, %d there", k, name, stop, here, there)
			}
		}
	}
}
