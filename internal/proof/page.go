package proof

import (
	_ "embed"
	"html/template"
	"io"
	"strings"
)

//go:embed page.gohtml
var pageText string

var layout = template.Must(template.New("page").Parse(pageText))

// Page is what the HTML file says beside the outcome.
type Page struct {
	*Outcome
	// Version is that of the program, Style a style sheet.
	Version string
	Style   string
}

// chapter is one family on the page.
type chapter struct {
	Title string
	Rows  []pageRow
}

// pageRow is a figure; the words of a case stand beside its first one, a source beside the
// first of the figures that have it.
type pageRow struct {
	*Row
	First, NewSource bool
}

// Words is the figure with spaces, so that it can be folded.
func (r pageRow) Words() string { return strings.ReplaceAll(r.Quantity, "_", " ") }

// HTML writes the outcome as one file that needs nothing else.
func HTML(w io.Writer, p Page) error {
	return layout.Execute(w, map[string]any{
		"Set": p.set(), "Version": p.Version, "Style": template.CSS(p.Style),
		"Answer": p.Answer(), "Rules": rules, "Limits": limits, "LeftOut": p.LeftOut, "Chapters": chapters(p.Rows),
	})
}

func chapters(rows []*Row) []chapter {
	var all []chapter
	for i, r := range rows {
		first := i == 0 || rows[i-1].Case != r.Case
		if i == 0 || rows[i-1].Case.Family != r.Case.Family {
			all = append(all, chapter{Title: title(r.Case.Family)})
		}
		last := &all[len(all)-1]
		last.Rows = append(last.Rows, pageRow{r, first, first || rows[i-1].Source != r.Source || rows[i-1].Known != r.Known})
	}
	return all
}

// set says in words which cases these are.
func (o *Outcome) set() string {
	switch {
	case o.Part:
		return "Only the cases that were asked for"
	case o.Full:
		return "The full set: all cases, to 0.3 %"
	}
	return "The quick set: most cases, to 1 %"
}
