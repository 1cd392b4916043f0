package scenario

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// readValues reads {6 s: 0.5, 8 s: 0.5}.
func (p *lawParameters) readValues(where at, n *tree.Node) {
	if n.Kind != tree.Map || len(n.Entries) == 0 {
		p.r.complain(where, "values are written with their shares: {6 s: 0.5, 8 s: 0.5}")
		return
	}
	for i, e := range n.Entries {
		if i+1 < len(n.Entries) && n.Entries[i+1].Value.Kind == tree.Null {
			continue // 0,5: said at the second half
		}
		place := at{e.Key, where.path}
		if e.Value.Kind == tree.Null {
			p.r.complain(place, "%v", quantity.ErrComma)
			continue
		}
		key, share := number{at: place}, number{at: at{e.Value, where.path}}
		p.r.readNumber(&key, e.Key, "", p.m(place))
		p.r.readNumber(&share, e.Value, `above:"0"`, quantity.Number)
		if slices.ContainsFunc(p.weighted, func(w sim.Weighted) bool { return w.Value == key.value }) {
			p.r.complain(place, "the value %q is written twice; add its shares", e.Key.Text)
		}
		p.weighted = append(p.weighted, sim.Weighted{Value: key.value, Weight: share.value})
	}
}

// headerUnit finds the unit in the heading of a column: "lasts (min)".
var headerUnit = regexp.MustCompile(`\(([^()]+)\)\s*$`)

// fromFile reads the values of an empirical law from a column of a CSV file.
// Cells have units, or the heading of the column has one in brackets.
func (r *reader) fromFile(where at, file *tree.Node, columnAt at, column *tree.Node, m measure) []sim.Weighted {
	name, ok := r.scalar(where, file)
	heading, okColumn := r.scalar(columnAt, column)
	if !ok || !okColumn {
		return nil
	}
	cells, err := r.column(name, heading)
	if err != nil {
		r.complain(at{file, where.path}, "%v", err)
		return nil
	}
	unit := ""
	if found := headerUnit.FindStringSubmatch(heading); found != nil {
		unit = " " + found[1]
	}
	parse, values := m(where), map[float64]float64{}
	for i, cell := range cells {
		value, err := parse(cell + unit)
		if err != nil || value < 0 {
			r.complain(at{file, where.path}, "%s, row %d: %s", name, i+2, cellFault(cell, err))
			return nil
		}
		values[value] += 1 / float64(len(cells))
	}
	weighted := make([]sim.Weighted, 0, len(values))
	for value, weight := range values {
		weighted = append(weighted, sim.Weighted{Value: value, Weight: weight})
	}
	slices.SortFunc(weighted, func(a, b sim.Weighted) int {
		if a.Value < b.Value {
			return -1
		}
		return 1
	})
	return weighted
}

func cellFault(cell string, err error) string {
	if err == nil {
		return fmt.Sprintf("%q is negative", cell)
	}
	return err.Error() + " (a heading such as \"lasts (min)\" gives the unit of its column)"
}

// column reads the cells below a heading. Columns are separated by commas or semicolons.
func (r *reader) column(name, heading string) ([]string, error) {
	if r.files == nil {
		return nil, fmt.Errorf("the file %q cannot be read from here", name)
	}
	text, err := r.files(name)
	if err != nil {
		return nil, fmt.Errorf("the file %q cannot be read: %w", name, err)
	}
	rows := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	if first, _, _ := bytes.Cut(text, []byte("\n")); bytes.ContainsRune(first, ';') {
		rows.Comma = ';'
	}
	all, err := rows.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("the file %q is not CSV: %w", name, err)
	}
	if len(all) < 2 {
		return nil, fmt.Errorf("the file %q has no rows below its headings", name)
	}
	at := slices.Index(all[0], heading)
	if at < 0 {
		return nil, fmt.Errorf("the file %q has no column %q; it has %s", name, heading, strings.Join(all[0], ", "))
	}
	var cells []string
	for _, row := range all[1:] {
		cells = append(cells, row[at])
	}
	return cells, nil
}
