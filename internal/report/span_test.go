package report

import (
	"strings"
	"testing"

	"tuckline/internal/result"
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

// A buffer without stops, rates, levels and people costs no more than its filling; where pieces come back to a hand magazine, the
// sentence says that the other two lines have none.
func TestSpanSaysWhatBuffersCost(t *testing.T) {
	o := inventedOutcome()
	value := func(v float64) result.Estimate { return result.Estimate{Mean: v, Low: v, High: v, N: 20} }
	o.Span = study.Span{Buffered: true, None: value(2776), Now: value(2771), Unlimited: value(2774)}
	sentence := func(b sim.Buffer) string {
		b.Name, b.From, b.Holds = "transfer store", []string{"blister machine"}, 720
		o.Scenario.Line.Buffers, o.Scenario.Buffers = []sim.Buffer{b}, []scenario.Buffer{{Unit: "blisters"}}
		return subjectOf(o).span().Sentence
	}
	const fill, own, back = "they have to fill first", "by their own stops", "What comes back to the transfer store comes back in the line as entered only"
	for _, c := range []struct {
		b         sim.Buffer
		says, not []string
	}{
		{sim.Buffer{Keeps: 30}, []string{fill}, []string{own, back}},
		{sim.Buffer{In: sim.Second}, []string{own}, []string{fill, back}},
		{sim.Buffer{Kind: sim.HandMagazine, Hand: sim.Hand{PerPiece: 1, Load: 1}, Returns: sim.Returns{Share: 1}}, []string{own, back}, []string{fill}},
	} {
		got := sentence(c.b)
		for _, words := range c.says {
			if !strings.Contains(got, words) {
				t.Errorf("%+v: %q does not say %q", c.b, got, words)
			}
		}
		for _, words := range c.not {
			if strings.Contains(got, words) {
				t.Errorf("%+v: %q says %q", c.b, got, words)
			}
		}
	}
}
