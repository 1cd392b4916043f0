package report

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/sim"
)

// Belts stay when buffers are taken away: every sentence about the span says so, where there are any.
func TestSpanSaysThatBeltsStay(t *testing.T) {
	withBelt, without := inventedOutcome(), inventedOutcome()
	without.Scenario.Line.Buffers = []sim.Buffer{{Name: "transfer store", From: []string{"blister machine"}, Holds: 720}}
	without.Scenario.Buffers = []scenario.Buffer{{Unit: "blisters"}}
	for _, c := range []struct {
		o     *study.Outcome
		belts bool
	}{{withBelt, true}, {without, false}} {
		page := wordsOf(t, Page{Outcome: c.o})
		for _, sentence := range []string{"Belts stay as they are in all three.", "Belts stayed as they are."} {
			if strings.Contains(page, sentence) != c.belts {
				t.Errorf("belts %v: %q", c.belts, sentence)
			}
		}
		c.o.Span = study.Span{}
		if said := strings.Contains(subjectOf(c.o).span().Sentence, "beside its belts"); said != c.belts {
			t.Errorf("belts %v: %q", c.belts, subjectOf(c.o).span().Sentence)
		}
	}
}
