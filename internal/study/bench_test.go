package study

import (
	"fmt"
	"os"
	"testing"
	"time"

	"tuckline/internal/scenario"
)

// readREF reads the reference line with some values set.
func readREF(b *testing.B, sets ...string) *scenario.Scenario {
	b.Helper()
	const file = "../../testdata/reference-line.yaml"
	text, err := os.ReadFile(file)
	if err != nil {
		b.Fatal(err)
	}
	s, err := scenario.Read(file, text, scenario.Options{Sets: sets})
	if err != nil {
		b.Fatal(err)
	}
	return s
}

func runREF(b *testing.B, s *scenario.Scenario, o Options) {
	b.Helper()
	if _, err := Run(b.Context(), s, o); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkWorkers runs 20 replications of the reference line with one worker
// and with two, in turn, and reports how much faster two are.
func BenchmarkWorkers(b *testing.B) {
	s := readREF(b)
	var took [3]time.Duration
	for b.Loop() {
		for _, workers := range []int{1, 2} {
			begun := time.Now()
			runREF(b, s, Options{To: 20, Workers: workers})
			took[workers] += time.Since(begun)
		}
	}
	b.ReportMetric(took[1].Seconds()/took[2].Seconds(), "times-one-worker")
}

// BenchmarkYear runs one year of the reference line, 8766 h, twice: a study needs
// two replications. One op is one year on one worker.
func BenchmarkYear(b *testing.B) {
	s := readREF(b, "run.measure=8765 h")
	for b.Loop() {
		runREF(b, s, Options{To: 2, Workers: 1})
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(2*b.N), "s/year")
}

// BenchmarkSweep runs 200 replications of the reference line for each of 20
// sizes of its first buffer.
func BenchmarkSweep(b *testing.B) {
	var sizes []*scenario.Scenario
	for i := range 20 {
		sizes = append(sizes, readREF(b, fmt.Sprintf("buffer 1.holds=%d blisters", 100+40*i)))
	}
	for b.Loop() {
		for _, s := range sizes {
			runREF(b, s, Options{To: 200})
		}
	}
}
