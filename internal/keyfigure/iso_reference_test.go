package keyfigure

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"tuckline/internal/reference"
	"tuckline/sim"
)

// input finds the number that follows a word in the inputs or in the name of the figure.
func input(t *testing.T, r reference.Row, words ...string) float64 {
	t.Helper()
	for _, word := range words {
		found := regexp.MustCompile(regexp.QuoteMeta(word) + `\s*([0-9.]*[0-9])`).FindStringSubmatch(r["inputs"] + "; " + r["quantity"])
		if found != nil {
			return reference.Number(t, found[1])
		}
	}
	return 0
}

// Every row of the table is computed and held against its value.
func TestFiguresOfStandards(t *testing.T) {
	for _, r := range reference.Table(t, "testdata/09_kpi.csv") {
		if name, ok := strings.CutPrefix(r["case_id"], "PACKML-"); ok {
			got := TR88States[int(reference.Number(t, name))-1]
			if text := fmt.Sprintf("%d %s", got.Number, got.Kind()); got.Name != r["inputs"] || text != r["published_value"] {
				t.Errorf("%s: %s %s, want %s %s", r, got.Name, text, r["inputs"], r["published_value"])
			}
			continue
		}
		got, ok := standardFigure(t, r)
		if !ok {
			t.Errorf("%s: nothing computes it", r)
		}
		r.Hold(t, got, r.Number(t, "tolerance"))
	}
}

func standardFigure(t *testing.T, r reference.Row) (float64, bool) {
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

func isoFigure(t *testing.T, r reference.Row, word string) (float64, bool) {
	times := ISOTimes{
		PlannedBusy: input(t, r, "PBT="), Production: input(t, r, "APT="),
		Setup: input(t, r, "AUST="), Delay: input(t, r, "ADET="), Down: input(t, r, "ADOT="),
	}
	counts := ISOCounts{Produced: input(t, r, "PQ="), Good: input(t, r, "GQ="), PlannedRunTime: input(t, r, "PRI=")}
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

func enFigure(t *testing.T, r reference.Row, word string) (float64, bool) {
	run := ENRun{
		Operating: input(t, r, "operating time"), SetOutput: input(t, r, "set output"),
		Made: input(t, r, "made"), Good: input(t, r, "good"),
		External: input(t, r, "of which"), ExternalRejects: input(t, r, "externally caused rejects"),
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

func availability(t *testing.T, r reference.Row, word string) (float64, bool) {
	var elements []float64
	for _, text := range strings.Split(strings.TrimPrefix(r["inputs"], "element availabilities "), "/") {
		elements = append(elements, reference.Number(t, text))
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
