package proof

import (
	"errors"
	"fmt"
	"strings"
)

// families are the files of the folder cases, with how lines are made of their rows.
var families = []struct {
	file, title string
	build       func(*entry)
}{
	{"queues", "Queues", queues},
	{"exponential", "Lines with exponential cycles", exponential},
	{"rigid", "Rigid lines and unlimited room", rigid},
	{"geometric", "Two machines with geometric stops", geometric},
	{"long", "Three and four machines with geometric stops", long},
	{"fluid", "Two machines, material that flows", fluid},
	{"bernoulli", "Machines that are up or down in each slot", bernoulli},
	{"unreliable", "Exponential cycles and stops, repairers", unreliable},
	{"general", "Repairs of any law", general},
	{"allocation", "Places dealt out between machines", allocation},
	{"merge", "Merges and splits", merge},
	{"repairmen", "Machines and repairers", repairmen},
	{"renewal", "Single machines, scrap, reels, stores", renewal},
	{"variance", "Spread of the output", variance},
	{"certified", "Certified statistics", certified},
	{"intervals", "Intervals", intervals},
	{"warmup", "End of the warm-up", warmUps},
	{"selection", "Choice among alternatives", selections},
	{"fits", "Laws fitted to logs", fits},
	{"goodness", "Fit of a law", goodness},
	{"keyfigures", "Key figures", keyFigures},
}

// Cases are all cases, in the order of the families, and what is left out. An error says that the
// embedded values are damaged.
func Cases() (cases []*Case, leftOut []LeftOut, err error) {
	cases, leftOut, _, err = catalogue()
	return cases, leftOut, err
}

// catalogue is Cases with the names of the reference cases that they come from.
func catalogue() (cases []*Case, leftOut []LeftOut, names []entryName, err error) {
	var errs []error
	for _, family := range families {
		entries, err := valuesOf(family.file)
		errs = append(errs, err)
		for _, e := range entries {
			family.build(e)
			errs = append(errs, e.errs...)
			if rest := e.unused(); len(rest) > 0 {
				errs = append(errs, fmt.Errorf("case %s: nothing is done with %s", e.name, strings.Join(rest, ", ")))
			}
			for _, c := range e.cases {
				if len(c.figures) > 0 {
					cases = append(cases, c)
				}
			}
			leftOut = append(leftOut, e.leftOut...)
			names = append(names, entryName{e.family, e.name})
		}
	}
	return cases, leftOut, names, errors.Join(errs...)
}

// title is the heading of a family.
func title(file string) string {
	for _, family := range families {
		if family.file == file {
			return family.title
		}
	}
	return file
}
