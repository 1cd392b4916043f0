package report

import (
	"io"
	"strings"
	"testing"

	"tuckline/internal/result"
	"tuckline/internal/study"
)

// What the span says where it has no share to tell: the golden file is the whole of it.
func TestWordsOfOddSpans(t *testing.T) {
	none := result.Estimate{N: 40}
	cases := []struct {
		name string
		bend func(*study.Outcome)
	}{
		{"interrupted before the span", func(o *study.Outcome) { o.Span, o.Interrupted = study.Span{Buffered: true}, true }},
		{"an end of it locks", func(o *study.Outcome) { o.Span = study.Span{Buffered: true, Locked: true} }},
		{"interrupted, and an end of it locks", func(o *study.Outcome) {
			o.Span, o.Interrupted = study.Span{Buffered: true, Locked: true}, true
		}},
		{"worse without limit", func(o *study.Outcome) {
			o.Span.Unlimited, o.Span.Recovered = about(o.Span.Now.Mean/2, 10), result.Estimate{}
		}},
		{"nothing without limit, though the line makes some", func(o *study.Outcome) {
			o.Span.Unlimited, o.Span.Recovered = none, result.Estimate{}
		}},
		{"nothing at all", func(o *study.Outcome) {
			o.Span = study.Span{Buffered: true, None: none, Now: none, Unlimited: none}
		}},
		{"no difference", func(o *study.Outcome) { o.Span.Recovered = result.Estimate{} }},
		{"lanes share", func(o *study.Outcome) { o.Span.Shared = true }},
	}
	golden(t, "spans.txt", func(w io.Writer) error {
		for _, c := range cases {
			o := inventedOutcome()
			c.bend(o)
			s := subjectOf(o)
			if _, err := io.WriteString(w, c.name+":\n  "+spanLine(s)+"\n"); err != nil {
				return err
			}
			for _, sentence := range method(s, "") {
				if !strings.Contains(sentence, "first with room") {
					continue
				}
				if _, err := io.WriteString(w, "  method: "+sentence+"\n"); err != nil {
					return err
				}
			}
		}
		return nil
	})
}
