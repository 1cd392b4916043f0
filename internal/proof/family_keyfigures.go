package proof

import (
	"errors"
	"regexp"
	"strings"

	"tuckline/internal/keyfigure"
)

// keyFigures: formulas of standards on given times and counts.
func keyFigures(e *entry) {
	kind, _, _ := strings.Cut(e.name, "-")
	if kind == "PACKML" {
		e.standardState()
		return
	}
	c := e.exactly(e.given["standard"]+": "+e.given["inputs"], ownFunction)
	for _, v := range e.values {
		own, known := e.keyFigure(kind, v.quantity)
		if known {
			e.sure(c, v.quantity, 0, own)
		}
	}
}

// standardState: the number of a state of the standard; its kind must agree as well.
func (e *entry) standardState() {
	v, name := e.values[0], e.given["inputs"]
	e.use(v)
	number, kind, _ := strings.Cut(v.text, " ")
	c := e.exactly(e.given["standard"]+": "+name+", "+kind, "The list of states of the program; the kind must agree as well.")
	c.figures = append(c.figures, &figure{
		quantity: "number of the state", source: v.source, known: v.known, kind: sure, exact: e.parse(v.quantity, number),
		compute: func() (float64, error) {
			for _, s := range keyfigure.TR88States {
				if s.Name == name && s.Kind() == kind {
					return float64(s.Number), nil
				}
			}
			return 0, nil // none: no state has this number
		},
	})
}

// input is the number behind a word of the inputs or of the name of the figure; 0 without.
func (e *entry) input(quantity, word string) float64 {
	found := regexp.MustCompile(regexp.QuoteMeta(word) + `\s*([0-9.]*[0-9])`).FindStringSubmatch(e.given["inputs"] + "; " + quantity)
	if found == nil {
		return 0
	}
	return e.parse(word, found[1])
}

// defined makes a value of a quotient; one without a divisor is an error.
func defined(x float64, ok bool) sureValue {
	return func() (float64, error) {
		if !ok {
			return 0, errors.New("there is nothing to divide by")
		}
		return x, nil
	}
}

func (e *entry) keyFigure(kind, quantity string) (own sureValue, known bool) {
	word, _, _ := strings.Cut(quantity, " ")
	switch kind {
	case "AVAIL":
		elements := e.list(strings.TrimPrefix(e.given["inputs"], "element availabilities "))
		own = map[string]sureValue{
			"series_product":       plain(keyfigure.SeriesAvailability(elements)),
			"parallel_one_of_n":    plain(keyfigure.ParallelAvailability(elements)),
			"series_stop_together": plain(keyfigure.RigidAvailability(elements)),
		}[word]
	case "DIN", "DINS":
		own = e.standardEN(quantity)[word]
	default:
		own = e.standardISO(quantity)[word]
	}
	return own, own != nil
}

func (e *entry) standardEN(quantity string) map[string]sureValue {
	in := func(word string) float64 { return e.input(quantity, word) }
	run := keyfigure.ENRun{
		Operating: in("operating time"), SetOutput: in("set output"), Made: in("made"), Good: in("good"),
		External: in("of which"), ExternalRejects: in("externally caused rejects"),
	}
	return map[string]sureValue{
		"quality_Q":               defined(keyfigure.ENQuality(run)),
		"performance_P":           defined(keyfigure.ENPerformance(run)),
		"efficiency_E":            defined(keyfigure.ENEfficiency(run)),
		"quality_output_pQ":       defined(keyfigure.ENQualityOutput(run)),
		"technical_efficiency_ES": defined(keyfigure.ENTechnicalEfficiency(run)),
	}
}

func (e *entry) standardISO(quantity string) map[string]sureValue {
	in := func(word string) float64 { return e.input(quantity, word) }
	times := keyfigure.ISOTimes{
		PlannedBusy: in("PBT="), Production: in("APT="), Setup: in("AUST="), Delay: in("ADET="), Down: in("ADOT="),
	}
	counts := keyfigure.ISOCounts{Produced: in("PQ="), Good: in("GQ="), PlannedRunTime: in("PRI=")}
	oee := defined(keyfigure.ISOOEE(times, counts))
	return map[string]sureValue{
		"availability": defined(keyfigure.ISOAvailability(times)), "effectiveness": defined(keyfigure.ISOEffectiveness(times, counts)),
		"quality_ratio": defined(keyfigure.ISOQualityRatio(counts)), "oee_index": oee, "oee_check_GQ*PRI/PBT": oee,
		"NEE":                      defined(keyfigure.ISONEE(times, counts)),
		"allocation_efficiency":    defined(keyfigure.ISOAllocationEfficiency(times)),
		"utilization_efficiency":   defined(keyfigure.ISOUtilisationEfficiency(times)),
		"technical_efficiency":     defined(keyfigure.ISOTechnicalEfficiency(times)),
		"setup_ratio":              defined(keyfigure.ISOSetupRatio(times)),
		"throughput_rate":          defined(keyfigure.ISOThroughputRate(times, counts)),
		"production_process_ratio": defined(keyfigure.ISOProductionProcessRatio(times)),
	}
}
