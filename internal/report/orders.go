package report

import (
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"

	"tuckline/internal/result"
)

// drawnOrders is how many orders the chart has at most; the table has all.
const drawnOrders = 24

// ordersSection shows when each order begins and ends, and what is left of it.
func ordersSection(s *subject) ([]section, error) {
	orders := s.Results.Orders
	if orders == nil || len(orders.Each) == 0 {
		return nil, nil
	}
	heading := s.ordersHeading()
	drawn := orders.Each[:min(drawnOrders, len(orders.Each))]
	option, err := s.ordersOption(drawn, described(heading))
	if err != nil {
		return nil, err
	}
	made := []section{{
		ID: "orders", Heading: heading, Reading: say("orders.reading", facts{"Start": s.startWords()}),
		Charts: []chart{{"orders", 90 + 30*len(drawn), option}}, Table: s.ordersTable(heading),
	}}
	if len(orders.Left) > 0 {
		t := table{Caption: say("orders.left.heading", nil), Words: 2, Head: append(heads("left.of", "left.what"), say("column.left.pieces", facts{"Window": s.Window.One}), say("column.unit", nil))}
		for _, one := range orders.Left {
			t.Rows = append(t.Rows, []cell{text(one.Of), text(say("orders.left."+one.What, nil)), estimateCell(numberOf(one.PerHour, s.Window.Hours)), text(one.Unit)})
		}
		made = append(made, section{ID: "left", Heading: t.Caption, Table: t, Open: true})
	}
	return made, nil
}

// startWords is the clock of the start, or that there is none.
func (s *subject) startWords() string {
	if s.Scenario.Calendar == nil {
		return say("orders.start", nil)
	}
	return s.Scenario.Calendar.Clock(0)
}

// ordersHeading says when the last order is finished, or how many are, of orders without end and of those that a window of fixed
// length cuts.
func (s *subject) ordersHeading() string {
	o := s.Results.Orders
	if o.Finish == nil || !o.Until && !o.Finish.P50.Within {
		return say("orders.heading.endless", facts{"N": endedOrders(o)})
	}
	return say("orders.heading", facts{"P50": timeOf(o.Finish.P50), "P95": timeOf(o.Finish.P95), "Within": o.Finish.P50.Within, "Most": o.Finish.P95.Within, "Unfinished": o.Unfinished, "Runs": s.Results.Replications + s.Results.Unfinished})
}

// endedOrders is how many orders are finished in half of the runs at least.
func endedOrders(o *result.Orders) int {
	n := 0
	for _, one := range o.Each {
		if one.Finishes.P50.Within {
			n++
		}
	}
	return n
}

// timeOf is a time as a clock, or in minutes and hours without a calendar, or that it does not lie within the run.
func timeOf(t result.ClockTime) string {
	switch {
	case !t.Within:
		return say("orders.not.within", nil)
	case t.At != "":
		return t.At
	}
	if minutes := t.Hours * 60; minutes > 0 && minutes < 59.95 {
		return rounded(minutes, -1) + thin + "min"
	}
	if t.Hours == 0 {
		return "0" + thin + "h"
	}
	return rounded(t.Hours, -2) + thin + "h"
}

// orderName is an order with the round of the list, from the second on.
func orderName(o result.OrderMade) string {
	if o.Round == 0 {
		return o.Name
	}
	return say("orders.round", facts{"Name": o.Name, "Round": o.Round + 1})
}

// ordersOption draws a bar from the median beginning to the median end of each order, and where 5 and 95 % of the ends lie.
func (s *subject) ordersOption(drawn []result.OrderMade, aria string) (template.JS, error) {
	var labels []string
	var bars, ends []opts.CustomData
	for i, o := range drawn {
		labels = append(labels, orderName(o))
		if !o.Begins.P50.Within || !o.Finishes.P50.Within {
			continue
		}
		tip := say("orders.tip", facts{
			"Name": orderName(o), "Begins": timeOf(o.Begins.P50), "P5": timeOf(o.Finishes.P5), "P50": timeOf(o.Finishes.P50), "P95": timeOf(o.Finishes.P95),
		})
		row, from, to := float64(i), round3(o.Begins.P50.Hours), round3(o.Finishes.P50.Hours)
		bars = append(bars, opts.CustomData{Name: tip, Value: []float64{row, from, to}})
		if o.Finishes.P95.Within {
			ends = append(ends, opts.CustomData{Name: tip, Value: []float64{row, to, round3(o.Finishes.P5.Hours), round3(o.Finishes.P95.Hours), 0}})
		}
	}
	c := charts.NewCustom()
	c.AddSeries("", bars, drawnSeries("spell", []int{1, 2}), colour("accent-soft"))
	c.AddSeries("", ends, drawnSeries("whisker", []int{1, 2, 3}), colour("ink"))
	x := valueAxis(say("orders.axis", facts{"Start": s.startWords()}), "fn:number")
	x.Min = 0
	c.SetGlobalOptions(append(frame(aria), noLegend(), plot("8", "24", "24"), charts.WithXAxisOpts(x), charts.WithYAxisOpts(names(labels)))...)
	return optionOf(c)
}

// drawnSeries is drawn with the rows on the vertical axis.
func drawnSeries(function string, x []int) charts.SeriesOpts { return drawn(function, x, 0) }

func (s *subject) ordersTable(caption string) table {
	t := table{Caption: caption, Words: 1, Head: heads("order", "order.begins", "order.P5", "order.P50", "order.P95", "order.input", "order.good", "order.changeover", "order.runs", "in.time")}
	for _, o := range s.Results.Orders.Each {
		inTime := cell{Text: "–"}
		if o.InTime.N > 0 {
			inTime = cell{o.Due + ": " + chance(o.InTime), chanceRange(o.InTime)}
		}
		t.Rows = append(t.Rows, []cell{
			text(orderName(o)), text(timeOf(o.Begins.P50)), text(timeOf(o.Finishes.P5)), text(timeOf(o.Finishes.P50)), text(timeOf(o.Finishes.P95)),
			estimateCell(numberOf(o.Input, 1)), estimateCell(numberOf(o.Good, 1)), estimateCell(numberOf(o.Changeover, 1)),
			text(say("orders.runs", facts{"N": o.Ended, "Of": s.Results.Replications + s.Results.Unfinished})), inTime,
		})
	}
	t.Long = len(t.Rows) > longOnPaper
	return t
}

// orderWords say in a sentence when the orders are finished; nothing where a window of fixed length ends before most of them.
func (s *subject) orderWords() string {
	o := s.Results.Orders
	if o == nil || len(o.Each) == 0 || o.Finish != nil && !o.Until && !o.Finish.P50.Within {
		return ""
	}
	return say("sentence", facts{"Words": s.ordersHeading()})
}
