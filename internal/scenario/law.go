package scenario

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// law is a value or a law in base units.
type law struct {
	at
	law sim.Law
	// canon describes it with every parameter, for the hash.
	canon string
}

// The laws, by what they measure.
type (
	// durationLaw is in microseconds, more than 0.
	durationLaw struct{ law }
	// ageLaw is the age at which a stop strikes, on its clock.
	ageLaw struct {
		law
		age ageUnit
	}
)

// measure gives the parser of a place: what its texts measure.
type measure func(where at) parser

func (d *durationLaw) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	d.law.law, d.canon = r.readLaw(d.at, n, tag, func(at) parser { return quantity.Duration })
}

// lawWords are the parameters of each law, the usual ones first.
var lawWords = map[string][][]string{
	"exponential": {{"mean"}},
	"erlang":      {{"mean", "k"}},
	"gamma":       {{"mean", "cv"}},
	"lognormal":   {{"mean", "cv"}},
	"weibull":     {{"mean", "cv"}, {"shape", "scale"}},
	"normal":      {{"mean", "cv"}},
	"uniform":     {{"low", "high"}, {"mean", "cv"}},
	"triangular":  {{"low", "likely", "high"}},
	"geometric":   {{"mean", "step"}},
	"empirical":   {{"values"}, {"file", "column"}},
}

// lawNames are the words after dist.
func lawNames() []string {
	var names []string
	for name := range lawWords {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// bareWords are parameters without a unit.
var bareWords = []string{"cv", "k", "shape"}

// readLaw reads a bare value, {dist: …}, {mixture: […]} or a guessed range.
func (r *reader) readLaw(where at, n *tree.Node, tag reflect.StructTag, m measure) (sim.Law, string) {
	_, isMixture := n.Get("mixture")
	dist, isDist := n.Get("dist")
	switch {
	case n.Kind == tree.Map && isMixture:
		return r.readMixture(where, n, m)
	case n.Kind == tree.Map && isDist:
		return r.readDist(where, n, dist, m)
	}
	one := number{at: where}
	r.readNumber(&one, n, tag, positive(m(at{n, where.path})))
	return sim.Fixed(one.value), "fixed " + quantity.FormatNumber(one.value)
}

func positive(parse parser) parser {
	return func(text string) (float64, error) {
		value, err := parse(text)
		if err == nil && value <= 0 {
			err = fmt.Errorf("%q is out of range; it must be more than 0", text)
		}
		return value, err
	}
}

// readDist reads a law by its name and parameters.
func (r *reader) readDist(where at, n, dist *tree.Node, m measure) (law sim.Law, canon string) {
	name, ok := r.scalar(at{dist, where.path}, dist)
	if !ok {
		return law, ""
	}
	sets, known := lawWords[name]
	if !known {
		r.unknownLaw(at{dist, join(where.path, "dist")}, name)
		return law, ""
	}
	p := &lawParameters{r: r, m: m, where: where, name: name, values: map[string]float64{}}
	if !p.read(n, sets) {
		return law, ""
	}
	law, err := p.make()
	if err != nil {
		r.complain(where, "%s: %s", name, oneLine(err))
		return sim.Law{}, ""
	}
	if !law.IsZero() && p.values["plus"] > 0 {
		law = law.Shift(p.values["plus"])
	}
	return law, p.canon()
}

func (r *reader) unknownLaw(where at, name string) {
	if near, found := Nearest(name, lawNames()); found {
		r.complain(where, "%q is not a law; did you mean %q?", name, near)
		return
	}
	r.complain(where, "%q is not a law; it is one of %s", name, strings.Join(lawNames(), ", "))
}

// oneLine joins the lines of an error.
func oneLine(err error) string { return strings.ReplaceAll(err.Error(), "\n", "; ") }

// readMixture reads {mixture: [{weight: 0.97, dist: …}, …]}.
func (r *reader) readMixture(where at, n *tree.Node, m measure) (sim.Law, string) {
	list, _ := n.Get("mixture")
	if list.Kind != tree.List {
		r.complain(at{list, where.path}, "a mixture is a list: [{weight: 0.97, dist: …}, {weight: 0.03, dist: …}]")
		return sim.Law{}, ""
	}
	var parts []sim.Component
	canon := "mixture"
	for _, item := range list.Items {
		weight, law, text := r.readPart(at{item, where.path}, item, m)
		parts = append(parts, sim.Component{Weight: weight, Law: law})
		canon += fmt.Sprintf(" [%s × %s]", quantity.FormatNumber(weight), text)
	}
	plus := r.plus(where, n, m, []string{"mixture", "plus"})
	if slices.ContainsFunc(parts, func(p sim.Component) bool { return p.Law.IsZero() }) {
		return sim.Law{}, "" // said already
	}
	law, err := sim.Mixture(parts)
	if err != nil {
		r.complain(where, "mixture: %s", oneLine(err))
		return sim.Law{}, ""
	}
	return law.Shift(plus), canon + " plus " + quantity.FormatNumber(plus)
}

// readPart reads one part of a mixture.
func (r *reader) readPart(where at, n *tree.Node, m measure) (weight float64, law sim.Law, canon string) {
	w, weighted := n.Get("weight")
	dist, isDist := n.Get("dist")
	if !weighted || !isDist {
		r.complain(where, "a part of a mixture has a weight and a law: {weight: 0.97, dist: lognormal, mean: …, cv: …}")
		return 0, law, ""
	}
	one := number{at: at{w, where.path}}
	r.readNumber(&one, w, `above:"0" most:"1"`, quantity.Number)
	law, canon = r.readDist(where, n, dist, m)
	return one.value, law, canon
}

// plus reads the shift of a mixture and complains about words it does not know.
func (r *reader) plus(where at, n *tree.Node, m measure, known []string) float64 {
	shift := number{}
	for _, e := range n.Entries {
		if e.Key.Text == "plus" {
			shift.at = at{e.Value, join(where.path, "plus")}
			r.readNumber(&shift, e.Value, "", m(shift.at))
		} else if !slices.Contains(known, e.Key.Text) {
			r.complain(at{e.Key, where.path}, "%q is not a word of a mixture; it knows %s", e.Key.Text, strings.Join(known, ", "))
		}
	}
	return shift.value
}
