package reference

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// complaints is a test that keeps what is said.
type complaints struct{ said []string }

func (c *complaints) Helper()                      {}
func (c *complaints) Fatal(args ...any)            { panic(fmt.Sprint(args...)) }
func (c *complaints) Errorf(form string, a ...any) { c.said = append(c.said, fmt.Sprintf(form, a...)) }

const table = `case_id,quantity,published_value,recomputed_value,tolerance
ONE,mean,"2.5",2.4999,0.001
ONE,none,,,0
`

func TestRead(t *testing.T) {
	rows, err := Read(strings.NewReader(table))
	if err != nil || len(rows) != 2 || rows[0].String() != "ONE mean" || rows[0].Number(t, "published_value") != 2.5 {
		t.Fatalf("%v, %v", rows, err)
	}
	for _, damaged := range []string{"", "a,b\n", "a,b\n1\n", "a\n\"1\n"} {
		if rows, err := Read(strings.NewReader(damaged)); err == nil {
			t.Errorf("%q was read as %v", damaged, rows)
		}
	}
}

// Both values must hold; NaN never does, and a row without a value is no check.
func TestHoldCanSayNo(t *testing.T) {
	rows, err := Read(strings.NewReader(table))
	if err != nil {
		t.Fatal(err)
	}
	var nan float64
	nan /= nan
	for _, c := range []struct {
		row  int
		got  float64
		said int
	}{{0, 2.5, 0}, {0, 2.5005, 0}, {0, 2.50095, 1}, {0, 2.6, 2}, {0, nan, 2}, {1, 0, 1}} {
		var all complaints
		rows[c.row].Hold(&all, c.got, 0.001)
		if len(all.said) != c.said {
			t.Errorf("%v held against row %d: %q, want %d complaints", c.got, c.row+1, all.said, c.said)
		}
	}
}

func TestNumbers(t *testing.T) {
	if got := Numbers(t, "[1, 2.5 -3e2]"); !slices.Equal(got, []float64{1, 2.5, -300}) {
		t.Error(got)
	}
	for _, read := range []func(T){
		func(t T) { Number(t, "1/2") }, func(t T) { Whole(t, "1.5") }, func(t T) { Numbers(t, "1 x") },
		func(t T) { Table(t, "testdata/nowhere.csv") },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Error("no number, but the test goes on")
				}
			}()
			read(&complaints{})
		}()
	}
}
