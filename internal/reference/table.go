// Package reference reads tables of reference values: CSV, a row a value, with its source and how it
// is known in the same row. Tests and the proof hold the program against them.
package reference

import (
	"encoding/csv"
	"errors"
	"io"
)

// Row is one row of a table, by the names of its columns.
type Row map[string]string

// Read reads a table: the first line names the columns. An error says that it is no CSV, has lines of
// different lengths or no row.
func Read(from io.Reader) ([]Row, error) {
	lines, err := csv.NewReader(from).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(lines) < 2 {
		return nil, errors.New("a table needs a line of names and a row")
	}
	rows := make([]Row, len(lines)-1)
	for i, line := range lines[1:] {
		rows[i] = Row{}
		for k, column := range lines[0] {
			rows[i][column] = line[k]
		}
	}
	return rows, nil
}

// String is the case and the figure, to name the row in a complaint.
func (r Row) String() string { return r["case_id"] + " " + r["quantity"] }
