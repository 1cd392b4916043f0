//go:build proof

package sim_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/internal/scenario"
	"tuckline/sim"
)

// independentLine is a line that testdata/simpy models too.
type independentLine struct {
	name, file string
	counted    string // the station whose good pieces are the output
	// ours and theirs are numbers of replications; theirs cost a second or two each.
	ours, theirs int
}

// TestIndependentImplementation holds output, states and stops against the process model in Python
// under testdata/simpy, which shares no code and no random number. It runs in make proof
// (build tag proof, TUCKLINE_PROOF=1) and needs the Debian package python3-simpy3.
func TestIndependentImplementation(t *testing.T) {
	python := pythonWithSimPy(t)
	for _, l := range []independentLine{
		{"reference", filepath.Join("testdata", "reference-line.yaml"), "packer", 1000, 200},
		{"lowmere", filepath.Join("scenarios", "lowmere.yaml"), "tamper label", 1000, 120},
	} {
		t.Run(l.name, func(t *testing.T) {
			t.Parallel()
			compareSamples(t, l.simulate(t), l.independent(t, python, 8*sim.Hour))
		})
	}
}

func pythonWithSimPy(t *testing.T) string {
	t.Helper()
	if os.Getenv("TUCKLINE_PROOF") != "1" {
		t.Skip("set TUCKLINE_PROOF=1: it takes some minutes")
	}
	for _, python := range []string{os.Getenv("TUCKLINE_PYTHON"), "python3", "/usr/bin/python3"} {
		if python != "" && exec.Command(python, "-c", "import simpy").Run() == nil {
			return python
		}
	}
	t.Fatal("no Python with SimPy: install python3-simpy3, or name one in TUCKLINE_PYTHON")
	return ""
}

// modelRecord is what the process model prints of a replication: microseconds by station and state.
type modelRecord struct {
	Output float64
	States map[string]map[string]float64
	Stops  map[string]map[string]float64
}

// modelOutput runs the process model.
func modelOutput(t *testing.T, python string, input []byte, args ...string) []byte {
	t.Helper()
	run := exec.Command(python, append([]string{"-B", "run.py"}, args...)...)
	run.Dir = filepath.Join("..", "testdata", "simpy")
	var failed bytes.Buffer
	run.Stderr, run.Stdin = &failed, bytes.NewReader(input)
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, failed.String())
	}
	return out
}

// read reads the file of the line.
func (l *independentLine) read(t *testing.T) *scenario.Scenario {
	t.Helper()
	path := filepath.Join("..", l.file)
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	read, err := scenario.Read(path, src, scenario.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return read
}

// simulate runs the line here: samples over replications by the name of the figure.
func (l *independentLine) simulate(t *testing.T) map[string][]float64 {
	read := l.read(t)
	m := compile(t, read.Line)
	e := m.NewEngine()
	samples := map[string][]float64{}
	for r := range l.ours {
		rec := e.Run(sim.Options{Seed: seedOf(l.name), Replication: r, WarmUp: read.Run.WarmUp, Measure: read.Run.Measure})
		for i, st := range rec.Stations {
			name := read.Line.Stations[i].Name
			if name == l.counted {
				samples["output"] = append(samples["output"], float64(st.Passed))
			}
			for state, d := range st.States {
				key := name + ": " + sim.State(state).String()
				samples[key] = append(samples[key], float64(d)/float64(rec.Window))
			}
			for j, stop := range m.StopNames(i) {
				key := name + ": number of " + stop
				samples[key] = append(samples[key], float64(st.Stops[j].Count))
			}
		}
	}
	return samples
}

// independent runs the process model. States that it does not name have not been.
func (l *independentLine) independent(t *testing.T, python string, window sim.Micros) map[string][]float64 {
	out := modelOutput(t, python, nil, l.name, strconv.Itoa(l.theirs), strconv.FormatUint(seedOf(l.name), 10))
	samples := map[string][]float64{}
	lines := bufio.NewScanner(bytes.NewReader(out))
	for lines.Scan() {
		var one modelRecord
		if err := json.Unmarshal(lines.Bytes(), &one); err != nil {
			t.Fatal(err)
		}
		samples["output"] = append(samples["output"], one.Output)
		for station, states := range one.States {
			for _, state := range []sim.State{sim.Waiting, sim.Down, sim.Blocked, sim.Starved, sim.Running} {
				word := state.String()
				if state == sim.Waiting {
					word = "waiting"
				}
				key := station + ": " + state.String()
				samples[key] = append(samples[key], states[word]/float64(window))
			}
		}
		for station, stops := range one.Stops {
			for stop, n := range stops {
				key := station + ": number of " + stop
				samples[key] = append(samples[key], n)
			}
		}
	}
	return samples
}

// compareSamples judges the differences of the means with Welch's t at 1 % in all, shared equally
// between all figures (Bonferroni), and prints every figure.
func compareSamples(t *testing.T, ours, theirs map[string][]float64) {
	var names []string
	for name, x := range theirs {
		if stat.Mean(x, nil) > 0 || stat.Mean(ours[name], nil) > 0 {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	if len(names) < 15 {
		t.Fatalf("only %d figures: %v", len(names), names)
	}
	for _, name := range names {
		a, sa := stat.MeanStdDev(ours[name], nil)
		b, sb := stat.MeanStdDev(theirs[name], nil)
		va, vb := sa*sa/float64(len(ours[name])), sb*sb/float64(len(theirs[name]))
		freedom := (va + vb) * (va + vb) / (va*va/float64(len(ours[name])-1) + vb*vb/float64(len(theirs[name])-1))
		limit := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: freedom}.Quantile(1 - 0.01/float64(2*len(names)))
		half := limit * math.Sqrt(va+vb)
		line := fmt.Sprintf("%-42s here %11.5f, there %11.5f, difference %+.5f ± %.5f", name, a, b, a-b, half)
		if math.Abs(a-b) > half {
			t.Error(line + " OUTSIDE")
		} else {
			t.Log(line)
		}
	}
}
