package proof

import (
	"bufio"
	"fmt"
	"math"
	"path"
	"strings"

	"tuckline/internal/estimate"
)

const ownFunction = "The function of the program on the data of the source; no simulation."

// data reads the numbers of a file, one a line, behind its comments.
func (e *entry) data(name string) []float64 {
	file, err := files.Open(path.Join("cases", "data", name+".txt"))
	if err != nil {
		e.fail(err)
		return nil
	}
	defer file.Close()
	var all []float64
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if text := lines.Text(); !strings.HasPrefix(text, "#") {
			all = append(all, e.parse(name, text))
		}
	}
	return all
}

// plain is a value that is there already.
func plain(x float64) sureValue { return func() (float64, error) { return x, nil } }

// certified: mean, standard deviation and autocorrelation of the data sets of NIST.
func certified(e *entry) {
	sample := e.data(strings.ToLower(e.given["dataset"]))
	own := estimate.Of(sample, 0.95)
	lag, _ := estimate.Lag1(sample)
	c := e.exactly("Data set "+e.given["dataset"], ownFunction)
	e.sure(c, "mean", 0, plain(own.Mean))
	e.sure(c, "sd_n-1", 0, plain(own.SD))
	e.sure(c, "lag1_autocorrelation", 0, plain(lag))
}

// intervals: t intervals, paired differences, shares, numbers of replications.
func intervals(e *entry) {
	level, data := e.number("level"), e.given["data"]
	c := e.exactly(e.given["method"]+", "+data, ownFunction)
	kind, _, _ := strings.Cut(e.name, "-")
	switch kind {
	case "CI":
		own := estimate.Of(e.data("heat_flow_meter"), level)
		if a, b, two := strings.Cut(data, ";"); two {
			own = estimate.Paired(e.list(a), e.list(b), level)
		}
		e.ends(c, "", own)
		e.sure(c, "mean", 0, plain(own.Mean))
		e.sure(c, "mean_difference", 0, plain(own.Mean))
		e.sure(c, "sd", 0, plain(own.SD))
	case "T":
		e.sure(c, "t", 0, plain(estimate.StudentQuantile(int(e.list(strings.TrimPrefix(data, "df="))[0]), level)))
	case "PROP":
		counts := e.list(strings.ReplaceAll(data, "rejects", ""))
		e.ends(c, "clopper_", estimate.ClopperPearson(int(counts[0]), int(counts[1]), level))
		e.ends(c, "wilson_", estimate.Wilson(int(counts[0]), int(counts[1]), level))
	case "NREP":
		now, needed := estimate.Of(e.list(data), level), estimate.Needed
		if e.name == "NREP-REL" {
			needed = estimate.NeededRelative
		}
		e.sure(c, "n", 0, plain(float64(needed(now, 0.10, level))))
	}
}

func (e *entry) ends(c *Case, prefix string, own estimate.Interval) {
	e.sure(c, prefix+"lower", 0, plain(own.Low))
	e.sure(c, prefix+"upper", 0, plain(own.High))
}

// warmUps: where a series has settled.
func warmUps(e *entry) {
	c := e.exactly(e.given["method"]+", "+e.given["settings"], ownFunction)
	if strings.HasPrefix(e.name, "WELCH") {
		var replications [][]float64
		for _, text := range strings.Split(e.given["series"], "],") {
			replications = append(replications, e.list(text))
		}
		smooth := estimate.Welch(replications, int(e.behind(strings.Replace(e.given["settings"], ":", " ", 1), "window ")))
		e.sureEach(c, "moving_average", 0, func(i int) sureValue {
			if i >= len(smooth) {
				return plain(0) // too short: none of the values is 0
			}
			return plain(smooth[i])
		})
		return
	}
	cut, _ := estimate.MSER5(e.series())
	e.sure(c, "truncation_in_batches", 0, plain(float64(cut.Batches)))
	e.sure(c, "truncation_in_observations", 0, plain(float64(cut.Observations)))
	e.sure(c, "criterion_at_minimum", 0, plain(cut.Criterion))
	e.sure(c, "criterion_d0", 0, plain(cut.AtStart))
	e.sure(c, "mean_after_truncation", 0, plain(cut.Mean))
}

// series is a list of numbers, or the formula of the one case that has it.
func (e *entry) series() []float64 {
	text := e.given["series"]
	if !strings.HasPrefix(text, "y_i") {
		return e.list(text)
	}
	if text != "y_i = 5 + 4*0.9^i + 0.2*((7 i) mod 5 - 2), i=0..59" {
		e.fail(fmt.Errorf("unknown series %s", text))
	}
	series := make([]float64, 60)
	for i := range series {
		series[i] = 5 + 4*math.Pow(0.9, float64(i)) + 0.2*float64(7*i%5-2)
	}
	return series
}
