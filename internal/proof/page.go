package proof

import (
	_ "embed"
	"html/template"
	"io"
	"slices"
	"strings"
)

//go:embed page.gohtml
var pageText string

var layout = template.Must(template.New("page").Funcs(template.FuncMap{"inc": func(i int) int { return i + 1 }}).Parse(pageText))

// Page is what the HTML file says beside the outcome.
type Page struct {
	*Outcome
	// Version is that of the program, Platform the computer and the compiler, Date whatever the caller
	// wants to have printed, or empty; Style is a style sheet.
	Version, Platform, Date, Style string
	// Unknown says that nobody can tell from which sources the program was built.
	Unknown bool
}

// chapter is one family on the page. Sources and mappings stand above the table, each once.
type chapter struct {
	Title             string
	Mappings, Sources []string
	Rows              []pageRow
}

// pageRow is a figure; the words of a case stand beside its first one.
type pageRow struct {
	*Row
	First bool
	// Source and Mapping are numbers in the lists of the chapter, from 1; 0 without.
	Source, Mapping int
}

// Words is the figure with spaces, so that it can be folded.
func (r pageRow) Words() string { return strings.ReplaceAll(r.Quantity, "_", " ") }

// HTML writes the outcome as one file that needs nothing else.
func HTML(w io.Writer, p Page) error {
	return layout.Execute(w, map[string]any{
		"Set": p.set(), "Page": p, "Style": template.CSS(p.Style), "Answer": p.Answer(), "Rules": rules,
		"Limits": p.Limits(), "Reasons": p.Reasons(), "Tallies": p.Tallies(), "Chapters": chapters(p.Rows),
	})
}

func chapters(rows []*Row) []chapter {
	var all []chapter
	for i, r := range rows {
		if i == 0 || rows[i-1].Case.Family != r.Case.Family {
			all = append(all, chapter{Title: title(r.Case.Family)})
		}
		last := &all[len(all)-1]
		row := pageRow{Row: r, First: i == 0 || rows[i-1].Case != r.Case}
		row.Source = numberIn(&last.Sources, r.Source+": "+r.Known)
		if row.First {
			row.Mapping = numberIn(&last.Mappings, r.Case.Mapping)
		}
		last.Rows = append(last.Rows, row)
	}
	return all
}

// numberIn is the number of a text in a list, which it joins if it is new; 0 of an empty text.
func numberIn(list *[]string, text string) int {
	if text == "" {
		return 0
	}
	i := slices.Index(*list, text)
	if i < 0 {
		i = len(*list)
		*list = append(*list, text)
	}
	return i + 1
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
