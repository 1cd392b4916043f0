package proof

import (
	"fmt"
	"strconv"
	"strings"

	"tuckline/sim"
)

// entry is one case as it is read: what is given and the exact values. A family
// makes lines of it and says which value is which figure; what it leaves says why.
type entry struct {
	family, name string
	given        map[string]string
	values       []*value
	// unit is the unit of time of the case, in microseconds.
	unit float64

	cases   []*Case
	leftOut []LeftOut
	used    map[*value]bool
	errs    []error
}

// LeftOut is a case, or some of its figures, that is not compared, with the reason.
type LeftOut struct {
	Case   string `json:"case"`
	Reason string `json:"reason"`

	entry string
	// later says that the full set has it.
	later bool
}

func (e *entry) fail(err error) {
	if err != nil {
		e.errs = append(e.errs, fmt.Errorf("case %s: %w", e.name, err))
	}
}

// number is a parameter of the case.
func (e *entry) number(key string) float64 { return e.parse(key, e.given[key]) }

func (e *entry) parse(key, text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		e.fail(fmt.Errorf("%s %q is no number", key, text))
	}
	return x
}

// numbers are the parameters of its stations or places; none where the file has nothing or a dash.
func (e *entry) numbers(key string) []float64 {
	text := e.given[key]
	if text == "" || text == "-" {
		return nil
	}
	var all []float64
	for _, part := range strings.Split(text, "/") {
		all = append(all, e.parse(key, part))
	}
	return all
}

// list are all numbers of a text, whatever stands between them.
func (e *entry) list(text string) []float64 {
	var all []float64
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789.-+", r) }) {
		all = append(all, e.parse("value", word))
	}
	return all
}

// places are numbers of places.
func (e *entry) places(key string) []int64 {
	var all []int64
	for _, n := range e.numbers(key) {
		all = append(all, int64(n))
	}
	return all
}

// word is a parameter written as KEY=VALUE between other words; units behind the number fall away.
func (e *entry) word(key string) float64 {
	for _, text := range strings.FieldsFunc(e.given["parameters"], func(r rune) bool { return r == ' ' || r == ',' }) {
		if name, number, found := strings.Cut(text, "="); found && name == key {
			return e.parse(key, strings.TrimRight(number, "s/min"))
		}
	}
	e.fail(fmt.Errorf("%s is not given", key))
	return 1
}

// leave says why a quantity is not compared.
func (e *entry) leave(quantity, reason string) {
	for _, v := range e.values {
		if v.quantity == quantity && !e.used[v] {
			e.use(v)
			e.leftOut = append(e.leftOut, LeftOut{Case: e.name + ", " + quantity, Reason: reason, entry: e.name})
		}
	}
}

// leaveAll says why no quantity of the case is compared.
func (e *entry) leaveAll(reason string) {
	for _, v := range e.values {
		e.use(v)
	}
	e.leftOut = append(e.leftOut, LeftOut{Case: e.name, Reason: reason, entry: e.name})
}

func (e *entry) use(v *value) {
	if e.used == nil {
		e.used = map[*value]bool{}
	}
	e.used[v] = true
}

// unused are the quantities that a family has forgotten.
func (e *entry) unused() []string {
	var all []string
	for _, v := range e.values {
		if !e.used[v] {
			all = append(all, v.quantity)
		}
	}
	return all
}

// micros is a time of the case in microseconds.
func (e *entry) micros(t float64) sim.Micros { return sim.Micros(t * e.unit) }
