package report

import (
	"math"

	"tuckline/sim"
)

// orderColumns are what became of an order when the list was gone through for the first time.
func orderColumns(i int, name string) []csvColumn {
	column := func(what string, of func(*sim.OrderRecord) string) csvColumn {
		return csvColumn{name + ": " + what, func(r *sim.Record) string {
			for k := range r.Orders {
				if one := &r.Orders[k]; one.Order == i && one.Round == 0 {
					return of(one)
				}
			}
			return ""
		}}
	}
	return []csvColumn{
		column("began_h", func(o *sim.OrderRecord) string { return hoursOrNone(o.Began) }),
		column("finished_h", func(o *sim.OrderRecord) string { return hoursOrNone(o.Finished) }),
		column("input", func(o *sim.OrderRecord) string { return integer(o.Input) }),
		column("good", func(o *sim.OrderRecord) string { return integer(o.Good) }),
	}
}

// hoursOrNone is empty for a time that does not come.
func hoursOrNone(t sim.Micros) string {
	if t == math.MaxInt64 {
		return ""
	}
	return decimal(float64(t) / float64(sim.Hour))
}
