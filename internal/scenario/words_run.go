package scenario

import (
	"reflect"
	"strings"

	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// runTime is a time of the run. With a calendar it is scheduled time, and a day, a week or a year is as much as the
// calendar has in one.
type runTime struct {
	duration
	// unit is the span of the calendar that it counts; empty for hours and less.
	unit string
}

// calendarUnits are the lengths of the spans that a calendar knows, by their words.
var calendarUnits = map[string]float64{"day": float64(dayLength), "week": float64(weekLength), "year": 365 * float64(dayLength)}

func (t *runTime) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	t.duration.read(r, n, path, tag)
	if likely, found := n.Get("likely"); found {
		n = likely
	}
	for unit := range calendarUnits {
		if text := strings.TrimSuffix(n.Text, "s"); strings.HasSuffix(text, unit) {
			t.unit = unit
		}
	}
}

// scheduled is the time that it means with a calendar.
func (t *runTime) scheduled(c *Calendar) sim.Micros {
	if c == nil || t.unit == "" {
		return micros(t.value)
	}
	span := map[string]sim.Micros{"day": c.Day, "week": c.Week, "year": c.Year}[t.unit]
	return micros(t.value / calendarUnits[t.unit] * float64(span))
}

// warmUp is a time, or auto: found by a pilot.
type warmUp struct {
	runTime
	auto bool
}

func (w *warmUp) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	if n.Kind == tree.Scalar && n.Text == "auto" {
		w.auto = true
		return
	}
	if n.Kind == tree.Scalar && n.Text != "" && !strings.ContainsAny(n.Text, "0123456789") {
		r.complain(w.at, "%q is not known here; write a time such as 2 h, or auto", n.Text)
		return
	}
	w.runTime.read(r, n, path, tag)
}

// replicationsWords is a number, or a half-width to be reached.
type replicationsWords struct {
	at
	number    whole
	HalfWidth share `yaml:"half-width" need:"yes" above:"0 %" most:"50 %" about:"Half-width of the interval of the answer, as a share of its mean: replications are added until it is reached." eg:"2 %"`
	AtMost    whole `yaml:"at most" least:"20" most:"1000000" about:"Replications at which it ends, reached or not. Without it: 400." eg:"400"`
}

func (*replicationsWords) section() string { return "replications" }

// read takes a bare number too.
func (w *replicationsWords) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	if n.Kind == tree.Map {
		r.decodeStruct(n, reflect.ValueOf(w).Elem(), path)
		return
	}
	w.number.put(n, path)
	w.number.read(r, n, path, tag)
}
