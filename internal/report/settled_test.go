package report

import (
	"strings"
	"testing"

	"tuckline/internal/study"
	"tuckline/sim"
)

// The method says how the warm-up was found and how often the interval was looked at.
func TestMethodOfSettledStudies(t *testing.T) {
	o := inventedOutcome()
	if text := strings.Join(method(subjectOf(o), "1"), "\n"); strings.Contains(text, "pilot") || strings.Contains(text, "looked at") {
		t.Errorf("a plain study says %q", text)
	}
	o.WarmUp = study.WarmUp{Found: true, Length: 12 * sim.Minute}
	o.Precision = study.Precision{Asked: 0.02, Looks: 3, Reached: true}
	says(t, methodText(o),
		"The warm-up of 12 min was found by a pilot of 20 runs",
		"until the half-width was 2 % of the average; the interval was looked at 3 times.")
	o.WarmUp.Doubled, o.Precision.Looks, o.Precision.Reached = true, 1, false
	says(t, methodText(o),
		"The window was doubled to", "was looked at 1 time and was still wider at the last.")
}

// methodText is the method with ordinary spaces.
func methodText(o *study.Outcome) string {
	return strings.NewReplacer("\u202f", " ", "\u00a0", " ").Replace(strings.Join(method(subjectOf(o), "1"), "\n"))
}
