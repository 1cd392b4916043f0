package report

import (
	_ "embed"
	"regexp"
	"strings"
	"text/template"
)

// facts are what a sentence is made from; a missing one is an error.
type facts map[string]any

// english has every sentence that people read, each with a name. Another
// language is another file with the same names.
//
//go:embed words/en.txt
var english string

// englishTime has those of working time, people and orders.
//
//go:embed words/en-time.txt
var englishTime string

var sentences = template.Must(parseWords(english + englishTime))

// lineEnds lets the file break a sentence over lines.
var lineEnds = regexp.MustCompile(`\s*\n\s*`)

func parseWords(text string) (*template.Template, error) {
	return template.New("words").Option("missingkey=error").Parse(lineEnds.ReplaceAllString(text, " "))
}

// say writes the sentence of that name. A name or a fact that is missing is a
// fault of this package, which its tests find.
func say(name string, f facts) string {
	var b strings.Builder
	if err := sentences.ExecuteTemplate(&b, name, f); err != nil {
		panic(err)
	}
	return together(strings.TrimSpace(b.String()))
}

// beforeUnit is the space between a number and its unit.
var beforeUnit = regexp.MustCompile(`(\d) (%|ms|s|min|h|um|mm|m|mg|g|kg)([^\pL\d_]|$)`)

// together keeps numbers and their units on one line.
func together(text string) string { return beforeUnit.ReplaceAllString(text, "$1"+thin+"$2$3") }
