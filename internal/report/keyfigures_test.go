package report

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"unicode/utf8"

	"tuckline/internal/keyfigure"
	"tuckline/internal/result"
	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/sim"
)

// withKeyFigures is the invented outcome with key figures, and steps to another report.
func withKeyFigures() *study.Outcome {
	o := inventedOutcome("web <b>1</b>", "cartoner", "print-and-check", "bundler", "case packer")
	o.Results.LossTrees = nil
	v := &invented{7}
	figures := func(good float64) []result.KeyFigure {
		var all []result.KeyFigure
		for _, f := range keyfigure.KeyFigureList {
			value := about(0.6+0.4*v.next(), 0.01)
			if f.Unit != "" {
				value = about(good, 12)
			}
			all = append(all, result.KeyFigure{Key: f.Key, Name: f.Name, Standard: f.Standard, Formula: f.Formula, Source: f.Source, Unit: f.Unit, Value: value})
		}
		return all
	}
	step := func(choice, to, is string, points, oee float64) result.KeyFigureStep {
		s := result.KeyFigureStep{
			Choice: choice, To: to, Is: is, OEE: about(oee, 0.012), Points: about(points, 0.002),
			Availability: about(0.9, 0.01), Performance: about(0.9, 0.01), Quality: about(0.99, 0.001),
		}
		if points == 0 {
			s.Points = result.Estimate{N: 40}
		}
		return s
	}
	o.Results.KeyFigures = result.KeyFigures{
		Counting: result.Counting{RunTimeFrom: "set speed", MinorMinutes: 5, MinorAs: "performance", MaterialAs: "planned", NotBusy: []string{"breaks", "cleaning"}, HasReport: true, ReportedOEE: 0.61},
		At:       []string{"web <b>1</b>"}, Line: figures(3742),
		Stations: []result.StationFigures{
			{Name: "web <b>1</b>", Figures: figures(14968), Stops: []result.StopTimes{
				{Name: result.AllStops, BetweenMinutes: about(19.5, 1.1), RepairMinutes: about(3.2, 0.4), StoppedMinutes: about(3.6, 0.6)},
				{Name: "minor stop", Class: "minor", BetweenMinutes: about(25.3, 1.9), RepairMinutes: about(2.06, 0.17), StoppedMinutes: about(2.06, 0.17)},
				{Name: "once a year", Class: "breakdown"},
			}},
			{Name: "cartoner", Figures: figures(3742)},
		},
		Steps: []result.KeyFigureStep{
			step("", "", "own", 0, 0.66), step("breaks", "counted", "", -0.021, 0.639), step("minor stops count as", "availability", "reported", 0, 0.639),
			{Choice: result.StepData, To: "as reported", Points: about(-0.029, 0.012), OEE: result.Estimate{Mean: 0.61, Low: 0.61, High: 0.61, N: 40}},
		},
	}
	o.Results.KeyFigures.Steps[0].Points = result.Estimate{}
	o.Scenario.KeyFigures = scenario.KeyFigures{Counting: scenario.Counting{MinorUpTo: 5 * sim.Minute, MinorIn: scenario.FromPerformance, MaterialIn: scenario.FromPlanned, NotBusy: []string{"breaks", "cleaning"}}}
	o.Scenario.KeyFigures.Reported = &scenario.Reported{Counting: scenario.Counting{MinorUpTo: 30 * sim.Second, MinorIn: scenario.FromAvailability, MaterialIn: scenario.FromPlanned}, OEE: 0.61}
	o.Scenario.Agreement = scenario.Agreement{Efficiency: 0.85, OfTopSpeed: true, Run: 8 * sim.Hour, From: sim.Hour}
	return o
}

func TestTheWordsOfKeyFigures(t *testing.T) {
	text := golden(t, "report-figures.txt", func(w io.Writer) error {
		var page bytes.Buffer
		if err := layoutOnly(&page, Page{Outcome: withKeyFigures(), Version: "tuckline 0.1"}); err != nil {
			return err
		}
		_, err := io.WriteString(w, visibleText(page.String()))
		return err
	})
	// The same name of two standards is labelled, and what was not seen in a standard says so.
	for _, needed := range []string{"technical efficiency of ISO 22400-2", "technical efficiency E_S of EN 415-11", "check a licensed copy"} {
		if !strings.Contains(text, needed) {
			t.Errorf("the report does not say %q", needed)
		}
	}
	for _, f := range keyfigure.KeyFigureList {
		if f.Formula == "" || f.Source == "" || !strings.Contains(text, f.Formula) {
			t.Errorf("%s stands without its formula or source", f.Name)
		}
	}
	if strings.Contains(text, "once a year") {
		t.Error("a cause without a mean time is shown")
	}
}

// The rows of the drawing begin where the one above ends, and the last is what the other report shows.
func TestRowsOfSteps(t *testing.T) {
	rows := stepRows(withKeyFigures().Results.KeyFigures.Steps)
	at := rows[0].to
	for _, row := range rows[1:] {
		if row.from != 0 && row.from != at || row.from == 0 && row.to != at {
			t.Errorf("%s goes from %v to %v, the one above it ends at %v", row.label, row.from, row.to, at)
		}
		at = row.to
	}
	if len(rows) != 6 || at != 0.61 {
		t.Errorf("%d rows, the last to %v: %+v", len(rows), at, rows)
	}
}

// inventedAcceptance is an acceptance study with invented numbers.
func inventedAcceptance() *study.AcceptanceOutcome {
	o := withKeyFigures()
	passing := func(p float64) result.Estimate {
		return result.Estimate{Mean: p, Low: max(0, p-0.05), High: min(1, p+0.04), SD: 0.4, N: 400}
	}
	point := func(e, factor, passes, formula float64) result.AcceptancePoint {
		return result.AcceptancePoint{
			True: about(e, 0.006), Factor: factor, Passing: passing(passes), Shown: about(e+0.003, 0.004),
			Formula: result.PointFormula{Applies: true, SD: 0.038, Passing: formula, RunHours: max(0, 100*(e-0.85))},
		}
	}
	a := result.Acceptance{
		Format: 1, Title: o.Scenario.Title, ScenarioHash: "0123456789abcdef", Seed: 4711, Confidence: 0.95, LongRunHours: 2000,
		Agreement: result.AgreedRun{Efficiency: 0.85, Of: "top speed", RunHours: 8, ScheduledFromHours: 1, Unit: "cartons", FullPerHour: 6000, Needed: 40800, Runs: 400},
		AsEntered: point(0.8677, 1, 0.77, 0.66),
		Curve:     []result.AcceptancePoint{point(0.79, 2.04, 0.001, 0.002), point(0.85, 1.2, 0.6, 0.5), point(0.91, 0.55, 1, 0.998)},
		RunLength: result.RunLength{
			Power: 0.9, Asked: true, Entered: true, True: about(0.8677, 0.006), Factor: 1, Hours: 24, Low: 20, FormulaHours: 77.3,
			Lengths: []result.LengthPasses{{Hours: 4, Passing: passing(0.7)}, {Hours: 20, Passing: passing(0.88)}, {Hours: 24, Passing: passing(0.91)}, {Hours: 64, Passing: passing(0.93)}},
		},
		Formula:  result.Formula{Station: "web <b>1</b>", UpMinutes: 15.9, DownMinutes: 2.1, UpCV: 1, DownCV: 1.6},
		Warnings: []string{"A true efficiency of 99 % is out of reach."},
	}
	return &study.AcceptanceOutcome{Scenario: o.Scenario, Model: o.Model, Results: a}
}

func TestTheWordsOfAcceptance(t *testing.T) {
	page := AcceptancePage{Outcome: inventedAcceptance(), Version: "tuckline 0.1"}
	golden(t, "acceptance.txt", func(w io.Writer) error {
		v, err := acceptanceViewOf(page)
		if err != nil {
			return err
		}
		v.Engine = "engine"
		var b bytes.Buffer
		if err := layout.ExecuteTemplate(&b, "study.gohtml", v); err != nil {
			return err
		}
		if strings.Contains(b.String(), "<b>1</b>") || strings.Contains(b.String(), "ZgotmplZ") {
			t.Error("a name is taken for markup")
		}
		_, err = io.WriteString(w, visibleText(b.String()))
		return err
	})
	text := golden(t, "acceptance-terminal.txt", func(w io.Writer) error { return AcceptanceTerminal(w, page) })
	for line := range strings.Lines(text) {
		if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > 80 {
			t.Errorf("%d columns: %s", n, line)
		}
	}
	golden(t, "acceptance.csv", func(w io.Writer) error { return AcceptanceCSV(w, page.Outcome) })
}

// What is said of the run length in each case.
func TestSentencesOfRunLength(t *testing.T) {
	for _, c := range []struct {
		change func(*result.RunLength)
		want   string
	}{
		{func(l *result.RunLength) {}, "The line as entered passes with 90 % if the run lasts 24 h (20 h to more than 64 h); the renewal formula says 77 h."},
		{func(l *result.RunLength) { l.High = 40; l.FormulaHours = 0 }, "The line as entered passes with 90 % if the run lasts 24 h (20 h to 40 h)."},
		{func(l *result.RunLength) { l.Hours, l.Entered = 0, false }, "A line that truly runs at 86.77 % passes with 90 % only if the run lasts longer than 64 h, the longest that was simulated; the renewal formula says 77 h."},
		{func(l *result.RunLength) { l.Hours, l.FormulaHours = 4, 3.21 }, "The line as entered passes with 90 % from the shortest run that was looked at, 4 h; the renewal formula says 3.2 h."},
		{func(l *result.RunLength) { l.Asked = false }, "No line was looked at that truly runs above 85 %, so that no run is long enough to be passed with 90 %: a longer run makes it only more certain that it fails."},
	} {
		a := inventedAcceptance().Results
		c.change(&a.RunLength)
		if got := strings.ReplaceAll(lengthSentence(&a), thin, " "); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}
