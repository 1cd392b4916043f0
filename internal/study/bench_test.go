package study

import (
	"os"
	"testing"
	"time"

	"tuckline/internal/scenario"
)

// BenchmarkWorkers runs 20 replications of the reference line with one worker
// and with two, in turn, and reports how much faster two are.
func BenchmarkWorkers(b *testing.B) {
	const file = "../../testdata/reference-line.yaml"
	text, err := os.ReadFile(file)
	if err != nil {
		b.Fatal(err)
	}
	s, err := scenario.Read(file, text, scenario.Options{})
	if err != nil {
		b.Fatal(err)
	}
	var took [3]time.Duration
	for b.Loop() {
		for _, workers := range []int{1, 2} {
			begun := time.Now()
			if _, err := Run(b.Context(), s, Options{To: 20, Workers: workers}); err != nil {
				b.Fatal(err)
			}
			took[workers] += time.Since(begun)
		}
	}
	b.ReportMetric(took[1].Seconds()/took[2].Seconds(), "times-one-worker")
}
