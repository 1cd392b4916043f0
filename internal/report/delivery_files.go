package report

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"

	"tuckline/internal/study"
	"tuckline/sim"
)

// DeliveryCSV writes one row a run and order: when its input began and when it was finished, in hours after the start and as a clock,
// and the good pieces that were counted. What has not come to that has empty cells.
func DeliveryCSV(w io.Writer, o *study.DeliveryOutcome) error {
	rows := csv.NewWriter(w)
	// The writer keeps its first error for the end.
	_ = rows.Write([]string{"replication", "order", "began_h", "began_at", "finished_h", "finished_at", "input", "good"})
	c := o.Scenario.Calendar
	clock := func(t sim.Micros) []string {
		if t == math.MaxInt64 {
			return []string{"", ""}
		}
		return []string{decimal(float64(t) / float64(sim.Hour)), c.Clock(t)}
	}
	for i := range o.Records {
		for _, one := range o.Records[i].Orders {
			row := []string{strconv.Itoa(o.Records[i].Replication), o.Scenario.Orders.Batches[one.Order].Name}
			row = append(append(row, clock(one.Began)...), clock(one.Finished)...)
			_ = rows.Write(append(row, integer(one.Input), integer(one.Good)))
		}
	}
	rows.Flush()
	return rows.Error()
}

// DeliveryTerminal writes the summary in the order of the report. It keeps to 80 columns where words allow.
func DeliveryTerminal(w io.Writer, in DeliveryPage) error {
	f, d := deliveryFirstOf(in.Outcome), &in.Outcome.Results
	p := paper{width: terminalWidth}
	f.opening(&p)
	p.paragraph(say("delivery.table", nil))
	var names []string
	columns := [][]string{{say("column.finish.at", nil)}, {say("column.finish.from", nil)}, {say("column.finish.to", nil)}}
	for _, row := range finishTable(d).Rows {
		names = append(names, row[0].Text)
		for c := range columns {
			columns[c] = append(columns[c], row[c+1].Text)
		}
	}
	p.grid(names, columns, widest(names))
	if len(d.Orders) > 1 {
		p.gap()
		p.paragraph(say("delivery.due.heading", nil))
		var left, right []string
		for _, one := range d.Orders {
			left, right = append(left, one.Name+", "+one.Due), append(right, chance(one.InTime)+" ("+chanceRange(one.InTime)+")")
		}
		p.pairs(left, right)
	}
	return f.closing(&p, w)
}
