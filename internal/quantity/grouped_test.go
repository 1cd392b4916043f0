package quantity

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestGrouped(t *testing.T) {
	for digits, want := range map[string]string{
		"0": "0", "-0.00": "0.00", "999": "999", "1000": "1 000", "-1234567.25": "−1 234 567.25", "100000": "100 000", "0.12345": "0.12345",
	} {
		if got := Grouped(digits); strings.ReplaceAll(got, Thin, " ") != want {
			t.Errorf("%s: got %q, want %q", digits, got, want)
		}
	}
}

// What is shown can be typed into a scenario again and means the same.
func TestGroupedNumbersCanBeReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		digits := strconv.FormatFloat(rapid.Float64Range(0, 1e12).Draw(t, "number"), 'f', rapid.IntRange(0, 3).Draw(t, "decimals"), 64)
		want, _ := strconv.ParseFloat(digits, 64)
		if got, rest, err := split(Grouped(digits)); err != nil || rest != "" || got != want {
			t.Fatalf("%s is read as %v, rest %q: %v", digits, got, rest, err)
		}
	})
}
