package keyfigure

import (
	"fmt"

	"tuckline/internal/quantity"
)

// uncounted warns of stations that give pieces of the answer out of the line
// without being counted, before or behind.
func (f *Figures) uncounted(way *flow, c *counting) []string {
	var ends, all []string
	for i := range f.Stations {
		s := &f.Stations[i]
		end := len(way.after[i]) == 0 && !c.to[i] && !c.from[i] && quantity.SameUnit(s.GivesUnit, f.Unit)
		if end {
			ends = append(ends, s.Name)
		}
		if end || c.counted(i) {
			all = append(all, s.Name)
		}
	}
	if len(ends) == 0 {
		return nil
	}
	verb := map[bool]string{true: "gives leaves the line and is", false: "give leaves the line and is"}[len(ends) == 1]
	return []string{fmt.Sprintf("What %s %s not counted: to add it up, write answer: {counted after: [%s]}.", listed(ends), verb, joined(all, ", "))}
}
