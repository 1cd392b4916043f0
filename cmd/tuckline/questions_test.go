package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tuckline/internal/estimate"
	"tuckline/internal/result"
)

// answer is what a run has left: its results, and the columns of replications.csv.
type answer struct {
	result.Results
	columns map[string][]float64
}

// ask types a command from the top folder of the project, with a new folder for the results.
func ask(t *testing.T, command string) answer {
	t.Helper()
	out := filepath.Join(t.TempDir(), "results")
	typed(t, command, "--out", out)
	text, err := os.ReadFile(filepath.Join(out, "results.json"))
	if err != nil {
		t.Fatal(err)
	}
	var a answer
	if err := json.Unmarshal(text, &a.Results); err != nil {
		t.Fatal(err)
	}
	a.columns = columnsOf(t, filepath.Join(out, "replications.csv"))
	return a
}

// typed is what a command says, each run of white space as one space.
func typed(t *testing.T, command string, more ...string) string {
	t.Helper()
	t.Chdir(filepath.Join("..", ".."))
	defer t.Chdir(filepath.Join("cmd", "tuckline"))
	var stdout, stderr bytes.Buffer
	if code := run(append(words(command)[1:], more...), &stdout, &stderr); code != done {
		t.Fatalf("%s: exit code %d\n%s", command, code, stderr.String())
	}
	return regexp.MustCompile(`\s+`).ReplaceAllString(stdout.String(), " ")
}

// says makes sure that a check says each of the texts.
func says(t *testing.T, command string, texts ...string) {
	t.Helper()
	said := typed(t, command)
	for _, text := range texts {
		if !strings.Contains(said, text) {
			t.Errorf("%s does not say %q:\n%s", command, text, said)
		}
	}
}

func columnsOf(t *testing.T, file string) map[string][]float64 {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	columns := map[string][]float64{}
	for i, name := range rows[0] {
		for _, row := range rows[1:] {
			if value, err := strconv.ParseFloat(row[i], 64); err == nil {
				columns[name] = append(columns[name], value)
			}
		}
	}
	return columns
}

// column is a value of each replication.
func (a answer) column(t *testing.T, name string) []float64 {
	t.Helper()
	if len(a.columns[name]) != a.Replications {
		t.Fatalf("%q has %d values in %d replications", name, len(a.columns[name]), a.Replications)
	}
	return a.columns[name]
}

func (a answer) mean(t *testing.T, name string) float64 {
	t.Helper()
	return estimate.Of(a.column(t, name), 0.95).Mean
}

// measure is a value that was asked for with --show.
func (a answer) measure(t *testing.T, name, of string) result.Estimate {
	t.Helper()
	for _, m := range a.Measures {
		if m.Name == name && m.Of == of {
			return m.Value
		}
	}
	t.Fatalf("there is no %q of %q in %+v", name, of, a.Measures)
	return result.Estimate{}
}

// more is by how much a column is greater than that of another answer, replication by replication.
func (a answer) more(t *testing.T, than answer, column string) estimate.Interval {
	t.Helper()
	return estimate.Paired(a.column(t, column), than.column(t, column), 0.95)
}

// within is a complaint about a value outside what the trade, or a calculation, expects.
func within(t *testing.T, what string, value, low, high float64) {
	t.Helper()
	if !(low <= value && value <= high) {
		t.Errorf("%s is %.4g, not between %.4g and %.4g", what, value, low, high)
	}
}

// greater makes sure that all of the interval of a difference lies above 0.
func greater(t *testing.T, what string, difference estimate.Interval) {
	t.Helper()
	if !difference.Given() || difference.Low <= 0 {
		t.Errorf("%s is not greater: %+v", what, difference)
	}
}
