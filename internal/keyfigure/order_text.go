package keyfigure

import (
	"cmp"
	"fmt"
	"strings"

	"tuckline/sim"
)

// orderLines are the orders as people read them.
func (f *Figures) orderLines() (out []item) {
	for i := range f.Orders {
		o := &f.Orders[i]
		out = append(out, item{cmp.Or(o.Product, "batch"), o.text(f.Unit)})
		for k := range o.Times {
			out = append(out, o.Times[k].lines()...)
		}
	}
	var setUps []string
	for _, s := range f.SetUps {
		setUps = append(setUps, fmt.Sprintf("%s %s of %s min%s", timesOf(s.N), s.Name, number(s.Minutes), byCrew(s.Crew)))
	}
	if len(setUps) > 0 {
		out = append(out, item{"changeovers", strings.Join(setUps, ", ")})
	}
	if f.WithoutEnd {
		out = append(out, item{"and then", "all of it again, without end"})
	}
	return out
}

func timesOf(n int) string {
	if n == 1 {
		return "once"
	}
	return count(int64(n)) + " times"
}

func byCrew(w sim.Work) string {
	if w.Crew == "" {
		return ""
	}
	return fmt.Sprintf(" by %d of %s", w.People, w.Crew)
}

// text says what a batch is, from tablets to cases.
func (o *Order) text(unit string) string {
	many := ""
	if o.Batches > 1 {
		many = count(int64(o.Batches)) + " batches, each "
	}
	var parts []string
	for i, a := range o.Makes {
		most := ""
		if a.Unit == "cartons" && i > 0 {
			most = "at most "
		}
		parts = append(parts, most+count(a.N)+" "+a.Unit)
	}
	text := many + strings.Join(parts, ", ")
	if o.Good > 0 {
		text = many + count(o.Good) + " good " + unit + ", losses made up for"
	}
	if o.Due != "" {
		text += "; due " + o.Due
	}
	return text
}

// lines are the hours and the reels of a batch.
func (t *BatchTime) lines() []item {
	where := ""
	if t.Line != "" {
		where = " in " + t.Line
	}
	out := []item{{"hours a batch" + where, fmt.Sprintf("%s at the set speed of %s", number(t.Hours), listed(t.Machines))}}
	var reels []string
	for _, r := range t.Reels {
		at := ""
		if r.Machine != "" {
			at = " at " + r.Machine
		}
		reels = append(reels, fixed(r.N, 1)+" of "+r.Material+at)
	}
	if len(reels) > 0 {
		out = append(out, item{"reels a batch" + where, strings.Join(reels, ", ")})
	}
	return out
}

// writeOrders writes the orders and the changeovers between them.
func (f *Figures) writeOrders(b *strings.Builder) {
	if lines := f.orderLines(); len(lines) > 0 {
		b.WriteString("\nOrders, without stops and rejects\n")
		writeLines(b, lines)
	}
}

// orderRows are the figures of the orders.
func (l *list) orderRows(f *Figures) {
	for i := range f.Orders {
		o := &f.Orders[i]
		l.group = cmp.Or(o.Product, "batch")
		l.add("batches", float64(o.Batches), "")
		for _, a := range o.Makes {
			l.add(a.Unit+" a batch", float64(a.N), a.Unit)
		}
		l.some("good pieces", float64(o.Good), f.Unit)
		for _, t := range o.Times {
			l.add(strings.TrimSpace("hours a batch "+t.Line), t.Hours, "h")
			for _, r := range t.Reels {
				l.add(strings.Join(strings.Fields("reels a batch "+t.Line+" "+r.Machine+" "+r.Material), " "), r.N, "reels")
			}
		}
	}
	l.group = "changeover"
	for _, s := range f.SetUps {
		l.add(s.Name, s.Minutes, "min")
	}
}
