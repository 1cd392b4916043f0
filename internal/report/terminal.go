package report

import (
	"io"
	"strings"
	"unicode/utf8"
)

// terminalWidth is what a terminal surely has.
const terminalWidth = 80

// Terminal writes the summary in the order of the report: the answer, the span
// as a line of text, what stands in the way, the table of stations, warnings.
// It needs no colour and keeps to 80 columns where words allow.
func Terminal(w io.Writer, in Page) error {
	s := subjectOf(in.Outcome)
	f := s.spokenFirst(firstOf(s))
	names := s.speaker()
	p := paper{width: terminalWidth}
	p.paragraph(f.Title)
	p.paragraph(f.Question)
	p.gap()
	for _, sentence := range f.Answer {
		p.paragraph(sentence)
	}
	p.gap()
	p.paragraph(names.Replace(spanLine(s)))
	p.causes(f.Causes)
	p.gap()
	for _, words := range []string{s.waitWords(), s.lateWords(), s.shortWords(), s.orderWords(), s.dryWords()} {
		p.paragraph(names.Replace(words))
	}
	p.stations(s)
	p.measures(s)
	p.warnings(f.Warnings)
	p.gap()
	p.paragraph(say("interval.short", facts{
		"Confidence": short(100 * s.Results.Confidence), "N": whole(float64(s.Results.Replications)), "Windows": s.Window.Runs,
	}))
	_, err := io.WriteString(w, p.text.String())
	return err
}

// paper is text with a width.
type paper struct {
	text  strings.Builder
	width int
}

// spaced puts plain spaces where a terminal may not have thin ones, and keeps
// control characters of a file away from it.
func spaced(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\u202f' || r == '\u00a0':
			return '\u00a0'
		case r < ' ' || (r >= 0x7f && r < 0xa0) || (r >= 0x200b && r <= 0x200f) || (r >= 0x202a && r <= 0x202e):
			return ' '
		default:
			return r
		}
	}, text)
}

// gap is an empty line, never two.
func (p *paper) gap() {
	if text := p.text.String(); text != "" && !strings.HasSuffix(text, "\n\n") {
		p.text.WriteByte('\n')
	}
}

// paragraph wraps a text; an empty one leaves nothing.
func (p *paper) paragraph(text string) { p.hanging("", text) }

// hanging wraps a text after a first word, and indents its later lines as far.
func (p *paper) hanging(first, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(first))
	line := first
	for _, word := range plainWords(spaced(text)) {
		switch {
		case line == first || line == indent:
			line += word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > p.width:
			p.line(line)
			line = indent + word
		default:
			line += " " + word
		}
	}
	if strings.TrimSpace(line) != "" {
		p.line(line)
	}
}

// line writes one line; spaces that held numbers together become plain.
func (p *paper) line(text string) {
	p.text.WriteString(strings.TrimRight(strings.ReplaceAll(spaced(text), "\u00a0", " "), " "))
	p.text.WriteByte('\n')
}

// spanLine is the span as one sentence.
func spanLine(s *subject) string {
	view := s.span()
	if !view.Shown || !s.Span.Buffered {
		return view.Sentence
	}
	f := facts{"Unit": s.Results.Output.Unit, "Sentence": view.Sentence}
	for _, m := range view.Marks {
		f[m.Key] = m.Value
	}
	return say("span.line", f)
}

// leastName is the width from which on a name of a cause may go on below.
const leastName = 28

func (p *paper) causes(c causes) {
	p.gap()
	p.paragraph(c.Intro)
	var names, costs, full []string
	for _, row := range c.Rows {
		names = append(names, row.Words)
		costs = append(costs, row.Cost)
		full = append(full, row.Cost+" ("+row.Minutes+")")
	}
	// Names go on below; where there is too little room even for that they say more than the minutes, which the report has too.
	least := min(widest(names), max(leastName, widest(strings.Fields(strings.Join(names, " ")))+4))
	if least+widest(full)+4 <= p.width {
		costs = full
	}
	p.pairs(names, costs)
}

// pairs are words on the left and values to the right of them; words that are
// too long go on below.
func (p *paper) pairs(left, right []string) {
	long, room := 0, max(20, p.width-4-widest(right))
	words := make([][]string, len(left))
	for i := range left {
		for k, line := range folded(spaced(left[i]), room-2) {
			if k > 0 {
				line = "  " + line
			}
			words[i] = append(words[i], fit(line, room))
			long = max(long, utf8.RuneCountInString(words[i][k]))
		}
	}
	for i, lines := range words {
		beside := right[i]
		for _, line := range lines {
			p.line("  " + padRight(line, long) + "  " + beside)
			beside = ""
		}
	}
}

func (p *paper) measures(s *subject) {
	var left, right []string
	for _, m := range s.Results.Measures {
		name, value := s.measureWords(m)
		left, right = append(left, name), append(right, value)
	}
	if len(left) > 0 {
		p.gap()
		p.paragraph(say("measures.title", nil))
		p.pairs(left, right)
		p.paragraph(s.measuresNote())
	}
}

func (p *paper) warnings(all []string) {
	if len(all) == 0 {
		return
	}
	p.gap()
	p.paragraph(say("warnings.title", nil))
	for _, warning := range all {
		p.hanging("  - ", warning)
	}
}

// fit shortens a text to a width.
func fit(text string, width int) string {
	runes := []rune(text)
	if len(runes) <= width {
		return text
	}
	return string(runes[:width-1]) + "…"
}

func padRight(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text)))
}

func padLeft(text string, width int) string {
	return strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text))) + text
}
