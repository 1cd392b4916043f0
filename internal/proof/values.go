package proof

import (
	"embed"
	"fmt"
	"path"
	"strconv"
	"strings"

	"tuckline/internal/reference"
)

//go:embed cases
var files embed.FS

// value is one row of a file in the folder cases: an exact value with its source.
type value struct {
	quantity string
	// text is the value as written: a number, several of them divided by spaces, or words.
	text      string
	published string
	tolerance string
	source    string
	// known says how: a, a figure seen in the source; b, a published figure recalled and computed anew;
	// f, a published formula evaluated; x, an exact chain solved; m, a formula from memory.
	known, note string
	// given are the other columns of the row.
	given map[string]string
}

// numbers are the values of a row.
func (v *value) numbers() ([]float64, error) {
	var all []float64
	for _, word := range strings.Fields(v.text) {
		x, err := strconv.ParseFloat(word, 64)
		if err != nil {
			return nil, fmt.Errorf("%s: %q is no number", v.quantity, word)
		}
		all = append(all, x)
	}
	return all, nil
}

// valuesOf reads the file of a family and puts the rows of each case together, in the order
// of the file.
func valuesOf(family string) ([]*entry, error) {
	file, err := files.Open(path.Join("cases", family+".csv"))
	if err != nil {
		return nil, err
	}
	defer file.Close()
	rows, err := reference.Read(file)
	if err != nil {
		return nil, fmt.Errorf("cases of %s: %w", family, err)
	}
	var all []*entry
	for _, row := range rows {
		v := valueOf(row)
		name := v.given["case_id"]
		if n := len(all); n == 0 || all[n-1].name != name {
			all = append(all, &entry{family: family, name: name, given: v.given, unit: 1e6})
		}
		last := all[len(all)-1]
		last.values = append(last.values, v)
	}
	return all, nil
}

func valueOf(row reference.Row) *value {
	v := &value{given: map[string]string{}}
	known := map[string]*string{
		"quantity": &v.quantity, "value": &v.text, "published": &v.published,
		"tolerance": &v.tolerance, "source": &v.source, "known": &v.known, "note": &v.note,
	}
	for column, text := range row {
		if place := known[column]; place != nil {
			*place = text
		} else {
			v.given[column] = text
		}
	}
	return v
}
