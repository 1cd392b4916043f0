package report

import "tuckline/internal/result"

// table stands folded below a chart. The first column has names, the others numbers.
type table struct {
	Caption string
	Head    []string
	// Rows of one cell are headings of those below them.
	Rows [][]cell
	// Words is how many columns, from the first, hold words.
	Words int
	// Long tables stay folded on paper.
	Long bool
	// Note is said above the table.
	Note string
}

// cell is a value and, small below it, its interval.
type cell struct{ Text, Small string }

func text(s string) cell { return cell{Text: s} }

func estimateCell(n number) cell {
	if !n.Known {
		return cell{Text: "–"}
	}
	if n.Alone {
		return text(n.Mean) // there is no interval
	}
	return cell{n.Mean, n.Range()}
}

// columnOf shows a column of estimates, all with the same precision.
func columnOf(estimates []result.Estimate, scale float64) []cell {
	return cellsAt(estimates, scale, columnPlace(estimates, scale))
}

// sharesColumn shows a column of shares of time in percent.
func sharesColumn(shares []result.Estimate) []cell { return cellsAt(shares, 100, sharesPlace(shares)) }

func cellsAt(estimates []result.Estimate, scale float64, place int) []cell {
	cells := make([]cell, len(estimates))
	for i, e := range estimates {
		cells[i] = estimateCell(atPlace(e, scale, place))
	}
	return cells
}

// tableOf puts columns side by side; the first words columns are of words.
func tableOf(caption string, head []string, words int, columns ...[]cell) table {
	t := table{Caption: caption, Head: head, Words: words}
	for i := range columns[0] {
		row := make([]cell, len(columns))
		for c := range columns {
			row[c] = columns[c][i]
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func textColumn(texts []string) []cell {
	cells := make([]cell, len(texts))
	for i, s := range texts {
		cells[i] = text(s)
	}
	return cells
}

func heads(names ...string) []string {
	all := make([]string, len(names))
	for i, name := range names {
		all[i] = say("column."+name, nil)
	}
	return all
}
