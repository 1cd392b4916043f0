package scenario

import (
	"fmt"
	"slices"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
	"tuckline/sim"
)

// lawParameters reads what a law needs and makes it.
type lawParameters struct {
	r      *reader
	m      measure
	where  at
	name   string
	values map[string]float64
	// weighted are the values of an empirical law.
	weighted []sim.Weighted
	// words are the parameters as written, mean the text of one of them.
	words []string
	mean  string
}

// read reads all parameters; it is false if there was something to complain about.
func (p *lawParameters) read(n *tree.Node, sets [][]string) bool {
	before := len(p.r.complaints)
	allowed := append([]string{"dist", "weight", "plus"}, slices.Concat(sets...)...)
	for i, e := range n.Entries {
		key := e.Key.Text
		where := at{e.Value, join(p.where.path, key)}
		p.r.index[where.path] = e.Value
		switch {
		case e.Value.Kind == tree.Null && i > 0 && digitComma(n.Entries[i-1].Value, key):
			p.r.complain(at{e.Key, p.where.path}, "%v", quantity.ErrComma)
		case !slices.Contains(allowed, key):
			p.unknown(at{e.Key, p.where.path}, key, sets)
		case slices.Contains(p.words, key):
			p.r.complain(at{e.Key, where.path}, "%q is written twice; one of them has to go", key)
		case key == "values":
			p.readValues(where, e.Value)
		case key != "dist" && key != "weight" && key != "file" && key != "column":
			p.readValue(where, key, e.Value)
		}
		p.words = append(p.words, key)
	}
	if len(p.r.complaints) == before {
		p.complete(n, sets)
	}
	if file, found := n.Get("file"); found && len(p.r.complaints) == before {
		column, _ := n.Get("column")
		p.weighted = p.r.fromFile(at{file, p.where.path}, file, at{column, p.where.path}, column, p.m)
	}
	return len(p.r.complaints) == before
}

func (p *lawParameters) unknown(where at, key string, sets [][]string) {
	if near, found := Nearest(key, slices.Concat(sets...)); found {
		p.r.complain(where, "%q is not a word of the law %s; did you mean %q?", key, p.name, near)
		return
	}
	p.r.complain(where, "%q is not a word of the law %s; it takes %s", key, p.name, choices(sets))
}

// choices lists the sets of parameters: "mean and cv, or shape and scale".
func choices(sets [][]string) string {
	texts := make([]string, len(sets))
	for i, set := range sets {
		texts[i] = strings.Join(set, " and ")
	}
	return strings.Join(texts, ", or ")
}

func (p *lawParameters) readValue(where at, key string, n *tree.Node) {
	one := number{at: where}
	parse := p.m(where)
	if slices.Contains(bareWords, key) {
		parse = quantity.Number
	}
	p.r.readNumber(&one, n, "", parse)
	p.values[key] = one.value
	if key == "mean" {
		p.mean = n.Text
	}
}

// complete checks that the parameters written are one of the sets.
func (p *lawParameters) complete(n *tree.Node, sets [][]string) {
	for _, set := range sets {
		missing, extra := false, false
		for _, w := range set {
			missing = missing || !slices.Contains(p.words, w) && !p.optional(w)
		}
		for _, w := range p.parameters() {
			extra = extra || !slices.Contains(set, w)
		}
		if !missing && !extra {
			return
		}
	}
	here := "nothing"
	if words := p.parameters(); len(words) > 0 {
		here = strings.Join(words, " and ")
	}
	p.r.complain(at{n, p.where.path}, "the law %s takes %s; here stands %s", p.name, choices(sets), here)
}

// parameters are the words that belong to the law itself.
func (p *lawParameters) parameters() []string {
	return slices.DeleteFunc(slices.Clone(p.words), func(w string) bool { return w == "dist" || w == "weight" || w == "plus" })
}

// optional is the step of a geometric law on cycles or pieces: it is 1.
func (p *lawParameters) optional(word string) bool {
	mean, err := quantity.ParseAge(p.mean)
	if word != "step" || err != nil || mean.Clock != quantity.Cycles && mean.Clock != quantity.Pieces {
		return false
	}
	p.values["step"] = 1
	return true
}

// make calls the constructor.
func (p *lawParameters) make() (sim.Law, error) {
	v := p.values
	has := func(word string) bool { return slices.Contains(p.words, word) }
	switch {
	case p.name == "exponential":
		return sim.Exponential(v["mean"])
	case p.name == "erlang":
		if v["k"] != float64(int(v["k"])) {
			return sim.Law{}, fmt.Errorf("k is a whole number")
		}
		return sim.Erlang(v["mean"], int(v["k"]))
	case p.name == "gamma":
		return sim.Gamma(v["mean"], v["cv"])
	case p.name == "lognormal":
		return sim.Lognormal(v["mean"], v["cv"])
	case p.name == "weibull" && has("shape"):
		return sim.WeibullShape(v["shape"], v["scale"])
	case p.name == "weibull":
		return sim.Weibull(v["mean"], v["cv"])
	case p.name == "normal":
		return sim.Normal(v["mean"], v["cv"])
	case p.name == "uniform" && has("low"):
		return sim.Uniform(v["low"], v["high"])
	case p.name == "uniform":
		return sim.UniformSpread(v["mean"], v["cv"])
	case p.name == "triangular":
		return sim.Triangular(v["low"], v["likely"], v["high"])
	case p.name == "geometric":
		return sim.Geometric(v["mean"], v["step"])
	}
	return sim.Empirical(p.weighted)
}

// canon describes the law with all parameters in a fixed order.
func (p *lawParameters) canon() string {
	text := p.name
	for _, w := range []string{"mean", "cv", "k", "shape", "scale", "low", "likely", "high", "step", "plus"} {
		if value := p.values[w]; value != 0 {
			text += " " + w + " " + quantity.FormatNumber(value)
		}
	}
	for _, w := range p.weighted {
		text += fmt.Sprintf(" %s: %s", quantity.FormatNumber(w.Value), quantity.FormatNumber(w.Weight))
	}
	return text
}
