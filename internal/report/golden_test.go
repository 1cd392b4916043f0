package report

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"tuckline/internal/result"
	"tuckline/internal/study"
	"tuckline/sim"
)

var update = flag.Bool("update", false, "write the golden files anew; look at them before you keep them")

func golden(t *testing.T, name string, write func(io.Writer) error) string {
	t.Helper()
	var got bytes.Buffer
	if err := write(&got); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got.String()); diff != "" {
		t.Errorf("%s differs (- want, + got):\n%s", name, diff)
	}
	return got.String()
}

// weekly is a line that is asked for pieces an hour, over 70 h, without buffers.
func weekly() *study.Outcome {
	o := inventedOutcome()
	o.Scenario.Answer.Per = "hour"
	o.Scenario.Run.Measure = 70 * sim.Hour
	o.Scenario.Question = ""
	o.Span = study.Span{}
	o.Interrupted = true
	o.Results.Measures = []result.Measure{
		{Name: "cartoner starved", Of: "cartoner", Per: "share of time", Value: about(0.0826, 0.0071)},
		{Name: "waiting for crew", Of: "operators", Per: "request, in seconds", Value: about(4.1, 0.7)},
	}
	o.Results.Stations[0].States.Changeover = about(0.021, 0.002)
	return o
}

func TestTheTerminal(t *testing.T) {
	for name, o := range map[string]*study.Outcome{"terminal.txt": inventedOutcome(), "terminal-hour.txt": weekly(), "terminal-hostile.txt": inventedOutcome(hostileNames...), "terminal-whole.txt": inventedWhole()} {
		text := golden(t, name, func(w io.Writer) error { return Terminal(w, Page{Outcome: o}) })
		for line := range strings.Lines(text) {
			if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > 80 {
				t.Errorf("%s: %d columns: %s", name, n, line)
			}
		}
	}
}

func TestTheTerminalIsKeptFromControlCharacters(t *testing.T) {
	o := inventedOutcome("a\x1b[31mred", "b\u202eright to left", "c\ttab", "d\u009bcontrol", "e\nline")
	var b strings.Builder
	if err := Terminal(&b, Page{Outcome: o}); err != nil {
		t.Fatal(err)
	}
	for _, never := range []string{"\x1b", "\u202e", "\t", "\u009b", "e\nline"} {
		if strings.Contains(b.String(), never) {
			t.Errorf("%q reached the terminal", never)
		}
	}
}

func TestResultsJSON(t *testing.T) {
	golden(t, "results.json", func(w io.Writer) error { return JSON(w, inventedOutcome().Results) })
}

func TestReplicationsCSV(t *testing.T) {
	o := inventedOutcome()
	o.Records = o.Records[:2]
	golden(t, "replications.csv", func(w io.Writer) error { return ReplicationsCSV(w, o) })
}

// What a whole line has beside: the columns that the plain one does not have.
func TestReplicationsCSVOfAWholeLine(t *testing.T) {
	o := inventedWhole()
	o.Records = o.Records[:2]
	golden(t, "replications-whole.csv", func(w io.Writer) error { return ReplicationsCSV(w, o) })
}

// The text of the page, as who listens to it hears it.
func TestTheWordsOfTheReport(t *testing.T) {
	for name, o := range map[string]*study.Outcome{"report.txt": inventedOutcome(), "report-whole.txt": inventedWhole()} {
		golden(t, name, func(w io.Writer) error {
			var page bytes.Buffer
			if err := layoutOnly(&page, Page{Outcome: o, Version: "tuckline 0.1"}); err != nil {
				return err
			}
			_, err := io.WriteString(w, visibleText(page.String()))
			return err
		})
	}
}
