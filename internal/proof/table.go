package proof

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"text/tabwriter"
)

// Table writes the answer and a line for every figure.
func Table(w io.Writer, o *Outcome) error {
	fmt.Fprintf(w, "%s.\n", o.set())
	for _, sentence := range o.Answer() {
		fmt.Fprintln(w, sentence)
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	family := ""
	for _, r := range o.Rows {
		if r.Case.Family != family {
			family = r.Case.Family
			fmt.Fprintf(t, "\n%s\nCASE\tFIGURE\tKNOWN\tOURS, 99 %%\tVERDICT\n", title(family))
		}
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\n", r.Case.Name, r.Quantity, r.ExactText(), r.ours(), r.Verdict())
	}
	return t.Flush()
}

func (r *Row) ours() string {
	if a := r.AllowanceText(); a != "" {
		return r.Interval() + ", " + a
	}
	return r.Interval()
}

// CSV writes a row for every figure, with model, mapping and source.
func CSV(w io.Writer, o *Outcome) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{"case", "model", "mapping", "figure", "exact", "published", "source", "known", "low", "high", "allowance", "tolerance", "replications", "verdict", "low repeated", "high repeated"})
	number := func(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
	for _, r := range o.Rows {
		tolerance := ""
		if r.Sure {
			tolerance = number(r.Tolerance)
		}
		row := []string{
			r.Case.Name, r.Case.Model, r.Case.Mapping, r.Quantity, number(r.Exact), r.Published, r.Source, r.Known,
			number(r.Low), number(r.High), number(r.Allowance), tolerance, strconv.Itoa(r.Replications), r.Verdict(), "", "",
		}
		if r.Again != nil {
			row[14], row[15] = number(r.Again.Low), number(r.Again.High)
		}
		_ = out.Write(row)
	}
	out.Flush()
	return out.Error()
}
