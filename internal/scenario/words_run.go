package scenario

import (
	"reflect"
	"strings"

	"tuckline/internal/scenario/tree"
)

// warmUp is a time, or auto: found by a pilot.
type warmUp struct {
	duration
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
	w.duration.read(r, n, path, tag)
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
