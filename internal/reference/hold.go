package reference

import (
	"math"
	"os"
	"strconv"
	"strings"
)

// T is the part of a test that is needed here, so that the program does not carry the package testing.
type T interface {
	Helper()
	Fatal(args ...any)
	Errorf(format string, args ...any)
}

// Table reads the file of a table; without it the test ends.
func Table(t T, path string) []Row {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := Read(file)
	if err != nil {
		t.Fatal(path, err)
	}
	return rows
}

// Hold compares a figure with the published and with the recomputed value; a row with neither is a
// fault of the table.
func (r Row) Hold(t T, got, tolerance float64) {
	t.Helper()
	held := 0
	for _, column := range []string{"published_value", "recomputed_value"} {
		if r[column] == "" {
			continue
		}
		held++
		if want := r.Number(t, column); !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s, %s: %.15g, want %.15g ± %g", r, column, got, want, tolerance)
		}
	}
	if held == 0 {
		t.Errorf("%s: no value to hold it against", r)
	}
}

// Number is the number in a column.
func (r Row) Number(t T, column string) float64 {
	t.Helper()
	return Number(t, r[column])
}

// Number reads a number; anything else ends the test.
func Number(t T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Whole reads a whole number.
func Whole(t T, text string) int {
	t.Helper()
	v, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Numbers reads the numbers of a list, divided by spaces or commas, with brackets or without.
func Numbers(t T, text string) []float64 {
	t.Helper()
	var list []float64
	for _, field := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,[]", r) }) {
		list = append(list, Number(t, field))
	}
	return list
}
