package keyfigure

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"unicode"
	"unicode/utf8"

	"tuckline/internal/quantity"
)

// width is the number of columns that a terminal surely has.
const width = 80

// Text writes the figures for a terminal: the bounds in sentences, the rates
// as a table, every station and place in the order of the line, warnings.
func (f Figures) Text(w io.Writer) error {
	var b strings.Builder
	f.writeHead(&b)
	for _, sentence := range f.sentences() {
		b.WriteString(wrapped("", sentence, 0))
	}
	f.writeRates(&b)
	for _, entry := range f.Way {
		lines := f.lines(entry)
		if len(lines) > 0 {
			b.WriteString("\n" + wrapped("", f.nameOf(entry), 0))
			writeLines(&b, lines)
		}
	}
	f.writeOrders(&b)
	f.writeWorking(&b)
	f.writeCrews(&b)
	f.writeAgreed(&b)
	if len(f.Warnings) > 0 {
		b.WriteString("\nTo be aware of\n")
		for _, warning := range f.Warnings {
			b.WriteString(wrapped("  - ", warning, 4))
		}
	}
	// A terminal may not have thin spaces.
	_, err := io.WriteString(w, strings.ReplaceAll(b.String(), quantity.Thin, " "))
	return err
}

func (f *Figures) writeHead(b *strings.Builder) {
	for _, text := range []string{f.Title, f.Question} {
		if text != "" {
			b.WriteString(wrapped("", text, 0))
		}
	}
	if b.Len() > 0 {
		b.WriteByte('\n')
	}
}

// writeRates writes the V-curve as a table.
func (f *Figures) writeRates(b *strings.Builder) {
	b.WriteString("\n" + wrapped("", fmt.Sprintf("Rates in %s a minute, counted after %s:", f.Unit, listed(f.CountedAfter)), 0))
	long := 0
	for _, s := range f.Stations {
		long = max(long, utf8.RuneCountInString(clipped(s.Name)))
	}
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', tabwriter.AlignRight)
	row := func(name string, columns ...string) {
		fmt.Fprintf(t, "  %-*s\t%s\t\n", long, clipped(name), strings.Join(columns, "\t"))
	}
	row("", "set", "top", "alone", "effective", "at most")
	for _, stage := range f.Stages {
		for _, i := range stage.Stations {
			s := &f.Stations[i]
			row(s.Name, fixed(s.Set.Answer, 1), fixed(s.Top.Answer, 1), percent(s.Alone), fixed(s.Effective.Answer, 1), fixed(s.AtMost.Answer, 1))
		}
		if len(stage.Stations) > 1 {
			row("  together", fixed(stage.Set, 1), fixed(stage.Top, 1), "", fixed(stage.Effective, 1), fixed(stage.AtMost, 1))
		}
	}
	// A strings.Builder does not fail.
	_ = t.Flush()
	b.WriteString(wrapped("", f.legend(), 0))
}

func (f *Figures) legend() string {
	text := "Alone: share of time it runs if nothing else stops it. Effective: set speed × alone, good pieces left at the count. " +
		"At most: the same at the highest speed it comes to run at"
	for _, s := range f.Stations {
		if len(s.JoinedWith) > 0 {
			text += ", with the stops of stations that stop with it"
			break
		}
	}
	if words := f.beyondDwell(atFastest); words != "" {
		return text + ". Rates of " + words + "."
	}
	return text + "."
}

// clipped keeps a name short enough for a table.
func clipped(name string) string {
	const most = 26
	name = plain(name)
	if utf8.RuneCountInString(name) <= most {
		return name
	}
	return string([]rune(name)[:most-1]) + "…"
}

// item is one figure of the walk along the line.
type item struct{ label, text string }

// writeLines writes labels and texts in two columns.
func writeLines(b *strings.Builder, items []item) {
	long := 0
	for _, one := range items {
		long = max(long, utf8.RuneCountInString(clipped(one.label)))
	}
	for _, one := range items {
		b.WriteString(wrapped(fmt.Sprintf("  %-*s  ", long, clipped(one.label)), one.text, long+4))
	}
}

// wrapped breaks a text into lines of at most width columns; later lines are indented.
func wrapped(first, text string, indent int) string {
	var b strings.Builder
	b.WriteString(first)
	column, fresh := utf8.RuneCountInString(first), true
	for _, word := range glued(plain(text)) {
		size := utf8.RuneCountInString(word)
		switch {
		case fresh:
		case column+1+size > width:
			b.WriteString("\n" + strings.Repeat(" ", indent))
			column = indent
		default:
			b.WriteByte(' ')
			column++
		}
		b.WriteString(word)
		column, fresh = column+size, false
	}
	b.WriteByte('\n')
	return b.String()
}

// glued splits a text into words and keeps a number with the unit behind it; thin spaces in
// numbers part no words.
func glued(text string) []string {
	var out []string
	open := false
	for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return unicode.IsSpace(r) && string(r) != quantity.Thin }) {
		if open { // a name may end in a number too: "blister machine 1 4.0 %"
			out[len(out)-1] += " " + word
		} else {
			out = append(out, word)
		}
		last := word[len(word)-1]
		open = last >= '0' && last <= '9'
	}
	return out
}

// plain keeps control characters of a file away from the terminal.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || (r >= 0x7f && r < 0xa0) {
			return ' '
		}
		return r
	}, text)
}
