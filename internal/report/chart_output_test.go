package report

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The ticks of a round axis reach from end to end in equal steps, so that none crowds the last.
func TestRoundAxisEndsOnATick(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		least := rapid.Float64Range(0, 1e6).Draw(t, "least")
		most := least + rapid.Float64Range(0.01, 1e5).Draw(t, "more")
		y := roundAxis(least, most)
		low, high, step := y.Min.(float64), y.Max.(float64), y.MinInterval
		if y.MaxInterval != step {
			t.Fatalf("steps from %v to %v", step, y.MaxInterval)
		}
		parts := (high - low) / step
		if math.Abs(parts-math.Round(parts)) > 1e-9 || parts < 1 || parts > 7 || low > least || high < most {
			t.Fatalf("%v to %v is drawn from %v to %v in %v steps", least, most, low, high, parts)
		}
	})
}
