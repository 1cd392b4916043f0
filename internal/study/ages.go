package study

import "tuckline/sim"

// allAges are the ages of the pieces of all replications together; nil where they were not followed.
func allAges(records []sim.Record) *sim.Ages {
	var all *sim.Ages
	for i := range records {
		one := records[i].Ages
		if one == nil {
			continue
		}
		if all == nil {
			all = &sim.Ages{}
		}
		all.Count += one.Count
		all.Sum += one.Sum
		for class, n := range one.Classes {
			for len(all.Classes) <= class {
				all.Classes = append(all.Classes, 0)
			}
			all.Classes[class] += n
		}
	}
	return all
}
