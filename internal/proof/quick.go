package proof

import (
	_ "embed"
	"fmt"
	"math"
	"strings"

	"tuckline/internal/reference"
)

// replicationsFile has, for every simulated case, the replications that a full set took: how many does
// not depend on where a value lies, only on how wide an interval is.
//
//go:embed replications.csv
var replicationsFile string

// mostWork is the work that a case of the quick set may take to come to 1 %, in cycles of stations and
// stops of all its replications together; about 1 s of one core.
const mostWork = 10_000_000

// onlyFull is why the quick set has no such case.
const onlyFull = "only in the full set (--full): it takes long"

// quickOf are the cases of the quick set: those whose work is small and, so that no family goes
// without, the smallest of each. How a case comes out plays no part.
func quickOf(cases []*Case) ([]*Case, error) {
	works, err := worksOf(cases)
	if err != nil {
		return nil, err
	}
	least := map[string]*Case{}
	for _, c := range cases {
		if now := least[c.Family]; now == nil || works[c] < works[now] {
			least[c.Family] = c
		}
	}
	var quick []*Case
	for _, c := range cases {
		if works[c] <= mostWork || least[c.Family] == c {
			quick = append(quick, c)
		}
	}
	return quick, nil
}

// worksOf is about how much each case takes to come to 1 %.
func worksOf(cases []*Case) (map[*Case]float64, error) {
	rows, err := reference.Read(strings.NewReader(replicationsFile))
	if err != nil {
		return nil, err
	}
	full := map[string]string{}
	for _, row := range rows {
		full[row["case"]] = row["replications"]
	}
	works := map[*Case]float64{}
	for _, c := range cases {
		if c.figures[0].kind == sure {
			works[c] = c.work
			continue
		}
		var n float64
		if _, err := fmt.Sscan(full[c.Name], &n); err != nil {
			return nil, fmt.Errorf("case %s: it is not recorded how many replications it takes", c.Name)
		}
		works[c] = c.toQuick(n) * c.replicationWork()
	}
	return works, nil
}

// spreadReplications bring the standard deviation of a normal law to 5 %: (2.576/0.05)²/2.
const spreadReplications = 1327

// toQuick is about how many replications come to 1 % if so many come to 0.3 %. A standard deviation wants
// the same in both sets; where another figure that is hard to hit decides, all of them.
func (c *Case) toQuick(full float64) float64 {
	least := float64(c.least)
	for _, f := range c.figures {
		switch {
		case f.exact == 0 || Quick.wanted(f) != Full.wanted(f):
		case f.kind == spread:
			least = math.Max(least, spreadReplications)
		default:
			return full
		}
	}
	return math.Max(least, full*math.Pow(Full.Usual/Quick.Usual, 2))
}

// replicationWork is the number of cycles and stops that one replication would have if nothing waited.
func (c *Case) replicationWork() float64 {
	span := float64(c.warmUp + c.measure)
	if c.later > 0 {
		span += float64(c.warmUp + c.later)
	}
	rate := 0.0
	for i := range c.line.Stations {
		s := &c.line.Stations[i]
		rate += 1 / s.Cycle.Mean()
		for k := range s.Stops {
			rate += 2 / (apart(&s.Stops[k], s) + s.Stops[k].Lasts.Mean())
		}
	}
	return span * rate
}

// onlyInFull are the cases that a quick set leaves out.
func onlyInFull(cases, quick []*Case) []LeftOut {
	in := map[*Case]bool{}
	for _, c := range quick {
		in[c] = true
	}
	var all []LeftOut
	for _, c := range cases {
		if !in[c] {
			all = append(all, LeftOut{Case: c.Name, Reason: onlyFull, entry: c.entry, later: true})
		}
	}
	return all
}
