package report

import (
	"bytes"
	"encoding/base64"
	"errors"
	"html"
	"io"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tuckline/internal/chartkit"
)

// layoutOnly is the page with a stand-in for the chart engine, for tests of its text.
func layoutOnly(w io.Writer, in Page) error { return write(w, in, []byte("engine")) }

var (
	notText = regexp.MustCompile(`(?s)<(style|script)\b.*?</(style|script)>`)
	anyTag  = regexp.MustCompile(`(?s)<[^>]*>`)
	blank   = regexp.MustCompile(`[ \t]*\n\s*`)
)

// visibleText is what is left of a page without its tags.
func visibleText(page string) string {
	text := notText.ReplaceAllString(page, "")
	text = regexp.MustCompile(`</(th|td|span|small)>`).ReplaceAllString(text, " ")
	text = html.UnescapeString(anyTag.ReplaceAllString(text, ""))
	return blank.ReplaceAllString(text, "\n")
}

func pageOf(t *testing.T, in Page) string {
	t.Helper()
	var b bytes.Buffer
	if err := layoutOnly(&b, in); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestThePageNeedsNothingElse(t *testing.T) {
	page := pageOf(t, Page{Outcome: inventedOutcome(), Version: "tuckline 0.1"})
	for _, needed := range regexp.MustCompile(`(?i)\b(src|href|action|data)\s*=\s*"([^"]*)"|url\(([^)]*)\)|@import`).FindAllString(page, -1) {
		if !strings.HasPrefix(needed, `href="data:application/yaml;base64,`) {
			t.Errorf("the page refers to something: %.90s", needed)
		}
	}
	if !strings.Contains(page, `content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"`) {
		t.Error("the page does not forbid itself the network")
	}
	if strings.Contains(page, "ZgotmplZ") {
		t.Error("the template package dropped a text that it took for unsafe")
	}
}

func TestTheScenarioCanBeSavedFromThePage(t *testing.T) {
	o := inventedOutcome()
	o.Scenario.Source = []byte("title: +/&<> \u202f\x00\n")
	o.Scenario.File = `C:\lines\fair"holt.yaml`
	page := pageOf(t, Page{Outcome: o})
	found := regexp.MustCompile(`<a download="([^"]*)" href="data:application/yaml;base64,([^"]*)">`).FindStringSubmatch(page)
	if found == nil {
		t.Fatal("there is no download")
	}
	if name := html.UnescapeString(found[1]); name != `fair"holt.yaml` {
		t.Errorf("it is saved as %q", name)
	}
	source, err := base64.StdEncoding.DecodeString(html.UnescapeString(found[2]))
	if err != nil || string(source) != string(o.Scenario.Source) {
		t.Errorf("the scenario comes out as %q (%v)", source, err)
	}
}

// The order of LOOK: the answer, the span, the causes, warnings, then charts
// along the line, then what stands behind them.
func TestTheOrderOfThePage(t *testing.T) {
	page := pageOf(t, Page{Outcome: inventedOutcome()})
	last := 0
	for _, mark := range []string{
		"<h1>", `class="answer"`, `class="span"`, `class="causes"`, `class="warnings"`,
		`id="output"`, `id="states"`, `id="waits"`, `id="level-0"`, `id="level-1"`, `id="timeline"`, `id="stops"`, `id="losses"`,
		`id="people"`, `id="rates"`, `id="inputs"`, `id="assumptions"`, `id="method"`, `id="cautions"`,
	} {
		at := strings.Index(page, mark)
		if at < last {
			t.Errorf("%s is missing or out of order", mark)
		}
		last = max(last, at)
	}
	charts, tables := strings.Count(page, `<div class="chart"`), strings.Count(page, "<table>")
	if charts != 10 || tables < charts {
		t.Errorf("%d charts and %d tables", charts, tables)
	}
}

func TestHostileNamesAreEscaped(t *testing.T) {
	o := inventedOutcome(hostileNames...)
	o.Results.Warnings = hostileNames
	o.Scenario.Question, o.Scenario.Project.Status = hostileNames[1], hostileNames[4]
	page := pageOf(t, Page{Outcome: o, Version: hostileNames[0]})
	if n := strings.Count(page, "<script"); n != strings.Count(page, "</script>") || strings.Contains(page, "<script>document") {
		t.Error("a name has opened or closed a script")
	}
	if strings.Contains(page, "<img") {
		t.Error("a name has become an element")
	}
	if rest, _, _ := strings.Cut(page, "</style>"); strings.Contains(rest, "body { display: none }") {
		t.Error("a name has become style")
	}
}

// Names of materials, tests, stores and causes are somebody else's text too.
func TestHostileNamesOfAWholeLineAreEscaped(t *testing.T) {
	o := inventedWhole()
	for i := range o.Results.Stations {
		s := &o.Results.Stations[i]
		for k := range s.Materials {
			s.Materials[k].Name, s.Materials[k].Unit = hostileNames[0], hostileNames[1]
		}
		for k := range s.Checks {
			s.Checks[k].Name = hostileNames[0]
		}
		for k := range s.Origins {
			s.Origins[k].Station, s.Origins[k].Cause = hostileNames[1], hostileNames[0]
		}
	}
	for i := range o.Results.Buffers {
		if o.Results.Buffers[i].Beside != nil {
			o.Results.Buffers[i].Name = hostileNames[0]
		}
	}
	page := pageOf(t, Page{Outcome: o})
	if strings.Contains(page, "<script>document") || strings.Contains(page, "<img") {
		t.Error("a name has become an element")
	}
	if strings.Count(page, "document.title=") < 8 {
		t.Error("the names are not on the page: nothing was tried")
	}
}

func TestAReportWithoutTheChartEngineIsRefused(t *testing.T) {
	_, missing := chartkit.GzipJS()
	if missing != nil && os.Getenv("CI") == "true" {
		t.Fatal(missing)
	}
	var b bytes.Buffer
	err := HTML(&b, Page{Outcome: inventedOutcome()})
	if !errors.Is(err, missing) {
		t.Fatalf("error is %v, want %v", err, missing)
	}
	if (err == nil) != (b.Len() > 0) {
		t.Errorf("%d bytes were written with error %v", b.Len(), err)
	}
}

func TestAWriterThatFailsIsReported(t *testing.T) {
	full := errors.New("disk full")
	for name, write := range map[string]func(io.Writer) error{
		"page":     func(w io.Writer) error { return layoutOnly(w, Page{Outcome: inventedOutcome()}) },
		"terminal": func(w io.Writer) error { return Terminal(w, Page{Outcome: inventedOutcome()}) },
		"json":     func(w io.Writer) error { return JSON(w, inventedOutcome().Results) },
		"csv":      func(w io.Writer) error { return ReplicationsCSV(w, inventedOutcome()) },
	} {
		if err := write(failing{full}); !errors.Is(err, full) {
			t.Errorf("%s: error is %v", name, err)
		}
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// Every sentence has a use, and nothing is said that has no sentence.
func TestEverySentenceIsUsed(t *testing.T) {
	defined := regexp.MustCompile(`{{define "([^"]+)"}}`).FindAllStringSubmatch(english, -1)
	source := sourceText(t)
	for _, d := range defined {
		if !used(source, d[1]) {
			t.Errorf("the sentence %q is used nowhere", d[1])
		}
	}
	for _, word := range []string{"validated", "verified", "significant", "replication"} {
		if strings.Contains(strings.ToLower(english), word) {
			t.Errorf("the words contain %q", word)
		}
	}
}

// used looks for the name, or for the part after a prefix to which code adds it.
func used(source, name string) bool {
	if strings.Contains(source, `"`+name+`"`) {
		return true
	}
	prefix, rest, found := strings.Cut(name, ".")
	for found {
		if strings.Contains(source, `"`+prefix+`."`) && (strings.Contains(source, `"`+rest+`"`) || strings.Contains(source, `"`+strings.TrimSuffix(rest, ".value")+`"`)) {
			return true
		}
		var next string
		next, rest, found = strings.Cut(rest, ".")
		prefix += "." + next
	}
	return false
}

func sourceText(t *testing.T) string {
	t.Helper()
	var all strings.Builder
	for _, folder := range []string{".", "assets"} {
		entries, err := os.ReadDir(folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if slices.ContainsFunc([]string{".go", ".gohtml"}, func(end string) bool { return strings.HasSuffix(e.Name(), end) }) && !strings.HasSuffix(e.Name(), "_test.go") {
				text, err := os.ReadFile(folder + "/" + e.Name())
				if err != nil {
					t.Fatal(err)
				}
				all.Write(text)
			}
		}
	}
	return all.String()
}
