package scenario

import (
	"flag"
	"fmt"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/invopop/jsonschema"

	"tuckline/internal/scenario/tree"
)

const (
	referencePage = "../../scenarios/REFERENCE.md"
	referenceMark = "-update -->\n"
)

// TestReferencePage holds the page of all words against the words: the tables
// are written from them, so that every word is on the page and no other.
func TestReferencePage(t *testing.T) {
	text, err := os.ReadFile(referencePage)
	if err != nil {
		t.Fatal(err)
	}
	head, old, found := strings.Cut(string(text), referenceMark)
	if !found {
		t.Fatalf("%s has no mark %q", referencePage, referenceMark)
	}
	tables := "\n" + referenceTables()
	if flag.Lookup("update").Value.String() == "true" {
		if err := os.WriteFile(referencePage, []byte(head+referenceMark+tables), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(tables, old); diff != "" {
		t.Errorf("%s is not up to date (-want +got):\n%s", referencePage, diff)
	}
	checkLawsOnPage(t, head)
}

// checkLawsOnPage looks for every law and every parameter in the written part,
// and for laws there that do not exist.
func checkLawsOnPage(t *testing.T, head string) {
	for law, sets := range lawWords {
		if !strings.Contains(head, "{dist: "+law+",") {
			t.Errorf("the law %s is not on the page", law)
		}
		for _, word := range slices.Concat(sets...) {
			if !strings.Contains(head, "`"+word+"`") {
				t.Errorf("the parameter %s is not on the page", word)
			}
		}
	}
	for _, found := range regexp.MustCompile(`dist: (\w+)`).FindAllStringSubmatch(head, -1) {
		if lawWords[found[1]] == nil {
			t.Errorf("the page has a law %q that does not exist", found[1])
		}
	}
}

// referenceTables is the generated part of the page.
func referenceTables() string {
	var b strings.Builder
	for _, kind := range wordTypes {
		known := wordsOf(kind)
		fmt.Fprintf(&b, "## %s%s\n\n| word | meaning | written as | range | example |\n|---|---|---|---|---|\n", strings.ToUpper(known.section[:1]), known.section[1:])
		for _, w := range known.words {
			fmt.Fprintln(&b, referenceRow(w.name, w.tag, kind.Field(w.field).Type))
		}
		if known.rest >= 0 {
			f := kind.Field(known.rest)
			fmt.Fprintln(&b, referenceRow("NAME", f.Tag, f.Type))
		}
		b.WriteByte('\n')
	}
	b.WriteString("## Words of later versions\n\nThese words belong to the format, but this version does not know them yet. It refuses them.\n\n")
	var later []string
	for section, words := range laterWords {
		if section != "" && len(words) > 0 {
			later = append(later, fmt.Sprintf("- %s: %s\n", section, strings.Join(words, ", ")))
		}
	}
	slices.Sort(later)
	b.WriteString(strings.Join(later, ""))
	return b.String()
}

func referenceRow(name string, tag reflect.StructTag, kind reflect.Type) string {
	written := writtenAs(tag, kind)
	if tag.Get("need") == "yes" {
		written += "; needed"
	}
	cells := []string{"`" + name + "`", tag.Get("about"), written, rangeOf(tag), "`" + tag.Get("eg") + "`"}
	for i, c := range cells {
		cells[i] = strings.ReplaceAll(c, "|", "\\|")
	}
	return "| " + strings.Join(cells, " | ") + " |"
}

// writtenAs says in words how a value is written.
func writtenAs(tag reflect.StructTag, kind reflect.Type) string {
	if of := tag.Get("of"); of != "" {
		return strings.ReplaceAll(of, "|", ", ")
	}
	value := reflect.New(kind).Interface()
	switch v := value.(type) {
	case container:
		inside := wordsAs(v.elem())
		if v.byName() {
			return "names, each with " + inside
		}
		return inside + ", or a list"
	case sectioned:
		return wordsAs(kind)
	case *text, *crewNeed, *formatNumber:
		return map[bool]string{true: "text", false: "name"}[kind == reflect.TypeFor[text]()]
	case *fromWords:
		return "a name, a list of names, supply"
	case *lineWords:
		return "a list of stations, conveyors and buffers"
	case *span:
		return "a range of times"
	case interface{ JSONSchema() *jsonschema.Schema }:
		return v.JSONSchema().Description
	}
	return ""
}

func wordsAs(kind reflect.Type) string {
	if s, ok := reflect.New(kind).Interface().(sectioned); ok {
		return "the words of " + s.section()
	}
	return writtenAs("", kind)
}

func rangeOf(tag reflect.StructTag) string {
	var parts []string
	for _, bound := range []struct{ tag, words string }{{"above", "more than "}, {"least", "at least "}, {"below", "less than "}, {"most", "at most "}} {
		if limit := tag.Get(bound.tag); limit != "" {
			parts = append(parts, bound.words+limit)
		}
	}
	return strings.Join(parts, ", ")
}

// TestExamplesOfWords reads the example of every word.
func TestExamplesOfWords(t *testing.T) {
	for _, kind := range wordTypes {
		known := wordsOf(kind)
		for _, w := range known.words {
			if w.tag.Get("about") == "" || w.eg() == "" {
				t.Errorf("%s of %s has no meaning or no example", w.name, known.section)
				continue
			}
			root, faults := tree.Parse("eg", []byte("x: "+w.eg()))
			if len(faults) > 0 {
				t.Fatalf("%s of %s: %v", w.name, known.section, faults)
			}
			r := &reader{file: "eg", index: map[string]*tree.Node{}}
			value, _ := root.Get("x")
			r.decode(value, reflect.New(kind.Field(w.field).Type).Interface(), w.name, w.tag)
			if len(r.complaints) > 0 {
				t.Errorf("the example of %s of %s is refused:\n%v", w.name, known.section, r.complaints)
			}
		}
	}
}

// TestLaterWordsAreUnknown makes sure that a word is either known or of a later version.
func TestLaterWordsAreUnknown(t *testing.T) {
	for _, kind := range wordTypes {
		known := wordsOf(kind)
		for _, w := range known.words {
			if isLater(known.section, w.name) {
				t.Errorf("%s of %s is known and of a later version", w.name, known.section)
			}
		}
	}
	sections := map[string]bool{"": true}
	for _, kind := range wordTypes {
		sections[wordsOf(kind).section] = true
	}
	for section := range laterWords {
		if !sections[section] {
			t.Errorf("there is no place called %q", section)
		}
	}
}
