package keyfigure

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tuckline/sim"
)

// standardRow is one line of 09_kpi.csv: the case, its inputs in words, the figure,
// its value with tolerance and source.
type standardRow map[string]string

func standardRows(t *testing.T) []standardRow {
	t.Helper()
	file, err := os.Open("testdata/09_kpi.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []standardRow
	for _, line := range lines[1:] {
		row := standardRow{}
		for i, column := range lines[0] {
			row[column] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// input finds the number that follows a word in the inputs or in the name of the figure.
func (r standardRow) input(t *testing.T, words ...string) float64 {
	t.Helper()
	for _, word := range words {
		found := regexp.MustCompile(regexp.QuoteMeta(word) + `\s*([0-9.]*[0-9])`).FindStringSubmatch(r["inputs"] + "; " + r["quantity"])
		if found != nil {
			return parsed(t, found[1])
		}
	}
	return 0
}

func parsed(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Every row of the table is computed and held against its value.
func TestFiguresOfStandards(t *testing.T) {
	for _, r := range standardRows(t) {
		what := r["case_id"] + " " + r["quantity"]
		if name, ok := strings.CutPrefix(r["case_id"], "PACKML-"); ok {
			got := TR88States[int(parsed(t, name))-1]
			if text := fmt.Sprintf("%d %s", got.Number, got.Kind()); got.Name != r["inputs"] || text != r["published_value"] {
				t.Errorf("%s: %s %s, want %s %s", what, got.Name, text, r["inputs"], r["published_value"])
			}
			continue
		}
		got, ok := standardFigure(t, r)
		want := parsed(t, r["recomputed_value"])
		if tolerance := parsed(t, r["tolerance"]); !ok || !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s: %.15g, %v, want %.15g ± %g", what, got, ok, want, tolerance)
		}
	}
}

func standardFigure(t *testing.T, r standardRow) (float64, bool) {
	word, _, _ := strings.Cut(r["quantity"], " ")
	switch family, _, _ := strings.Cut(r["case_id"], "-"); family {
	case "OEE", "TIME":
		return isoFigure(t, r, word)
	case "DIN", "DINS":
		return enFigure(t, r, word)
	case "AVAIL":
		return availability(t, r, word)
	}
	return 0, false
}

func isoFigure(t *testing.T, r standardRow, word string) (float64, bool) {
	times := ISOTimes{
		PlannedBusy: r.input(t, "PBT="), Production: r.input(t, "APT="),
		Setup: r.input(t, "AUST="), Delay: r.input(t, "ADET="), Down: r.input(t, "ADOT="),
	}
	counts := ISOCounts{Produced: r.input(t, "PQ="), Good: r.input(t, "GQ="), PlannedRunTime: r.input(t, "PRI=")}
	switch word {
	case "availability":
		return ISOAvailability(times)
	case "effectiveness":
		return ISOEffectiveness(times, counts)
	case "quality_ratio":
		return ISOQualityRatio(counts)
	case "oee_index", "oee_check_GQ*PRI/PBT":
		return ISOOEE(times, counts)
	case "NEE":
		return ISONEE(times, counts)
	case "allocation_efficiency":
		return ISOAllocationEfficiency(times)
	case "utilization_efficiency":
		return ISOUtilisationEfficiency(times)
	case "technical_efficiency":
		return ISOTechnicalEfficiency(times)
	case "setup_ratio":
		return ISOSetupRatio(times)
	case "throughput_rate":
		return ISOThroughputRate(times, counts)
	case "production_process_ratio":
		return ISOProductionProcessRatio(times)
	}
	return 0, false
}

func enFigure(t *testing.T, r standardRow, word string) (float64, bool) {
	run := ENRun{
		Operating: r.input(t, "operating time"), SetOutput: r.input(t, "set output"),
		Made: r.input(t, "made"), Good: r.input(t, "good"),
		External: r.input(t, "of which"), ExternalRejects: r.input(t, "externally caused rejects"),
	}
	switch word {
	case "quality_Q":
		return ENQuality(run)
	case "performance_P":
		return ENPerformance(run)
	case "efficiency_E":
		return ENEfficiency(run)
	case "quality_output_pQ":
		return ENQualityOutput(run)
	case "technical_efficiency_ES":
		return ENTechnicalEfficiency(run)
	}
	return 0, false
}

func availability(t *testing.T, r standardRow, word string) (float64, bool) {
	var elements []float64
	for _, text := range strings.Split(strings.TrimPrefix(r["inputs"], "element availabilities "), "/") {
		elements = append(elements, parsed(t, text))
	}
	switch word {
	case "series_product":
		return SeriesAvailability(elements), true
	case "parallel_one_of_n":
		return ParallelAvailability(elements), true
	case "series_stop_together":
		return RigidAvailability(elements), true
	}
	return 0, false
}

func TestNothingToDivideBy(t *testing.T) {
	times, counts, run := ISOTimes{}, ISOCounts{}, ENRun{}
	for what, figure := range map[string]func() (float64, bool){
		"availability":  func() (float64, bool) { return ISOAvailability(times) },
		"effectiveness": func() (float64, bool) { return ISOEffectiveness(times, counts) },
		"quality ratio": func() (float64, bool) { return ISOQualityRatio(counts) },
		"OEE":           func() (float64, bool) { return ISOOEE(ISOTimes{PlannedBusy: 5}, counts) },
		"NEE":           func() (float64, bool) { return ISONEE(times, counts) },
		"throughput":    func() (float64, bool) { return ISOThroughputRate(times, counts) },
		"EN efficiency": func() (float64, bool) { return ENEfficiency(run) },
		"E_S, all external": func() (float64, bool) {
			return ENTechnicalEfficiency(ENRun{Operating: 5, External: 5, SetOutput: 1, Good: 3})
		},
	} {
		if v, ok := figure(); ok || v != 0 {
			t.Errorf("%s of nothing: %g, %v", what, v, ok)
		}
	}
	if s, p, r := SeriesAvailability(nil), ParallelAvailability(nil), RigidAvailability([]float64{0.9, 0}); s != 1 || p != 0 || r != 0 {
		t.Errorf("series %g, parallel %g, rigid %g", s, p, r)
	}
}

// Every state of a station, with every class of stop, has a place in the standard;
// what it must be stands in the note of the table.
func TestEveryStateIsMapped(t *testing.T) {
	want := map[string]string{
		"running": "6 acting Execute", "starved": "5 wait Suspended", "blocked": "5 wait Suspended",
		"off shift": "2 wait Stopped", "planned stop": "2 wait Stopped", "changeover": "2 wait Stopped",
	}
	wantStop := map[sim.Class]string{
		sim.Minor: "11 wait Held", sim.MaterialChange: "11 wait Held", sim.Quality: "11 wait Held",
		sim.Breakdown: "9 wait Aborted", sim.External: "5 wait Suspended",
	}
	for state := sim.State(0); state < sim.NumStates; state++ {
		for class := sim.Minor; class <= sim.External; class++ {
			s, ok := TR88(state, class)
			expected := want[state.String()]
			if state == sim.Down || state == sim.Waiting {
				expected = wantStop[class]
			}
			if got := fmt.Sprintf("%d %s %s", s.Number, s.Kind(), s.Name); !ok || got != expected {
				t.Errorf("%s, %s: %s, want %s", state, class, got, expected)
			}
		}
	}
	if _, ok := TR88(sim.NumStates, sim.Minor); ok {
		t.Error("a state that does not exist was mapped")
	}
	if _, ok := TR88(sim.Down, sim.External+1); ok {
		t.Error("a class that does not exist was mapped")
	}
}
