package proof

import (
	"fmt"
	"slices"

	"tuckline/sim"
)

// Case is one line with exact figures, or one thing that the program computes without
// simulating.
type Case struct {
	Name, Family string
	// entry is the name in the file of the family; several cases may come from one.
	entry string
	// Model says in words what is simulated, Mapping what had to be translated.
	Model, Mapping string

	line sim.Line
	// warmUp is at least 20 times the longest mean repair or busy period; measure is the window
	// of one replication.
	warmUp, measure sim.Micros
	// later is a second, longer window for figures that are a slope; 0 without.
	later sim.Micros
	// least is the number of replications of the first look.
	least int
	// work is about that of a case without replications, in the cycles that take as long.
	work float64
	// unit is the unit of time of the case, in microseconds.
	unit    float64
	figures []*figure
}

// kind is how a figure comes from replications.
type kind uint8

const (
	// ratio is the sum of one count over the sum of another.
	ratio kind = iota
	// spread is the standard deviation of a count.
	spread
	// slope is the growth of the variance of a count from the window to the later one.
	slope
	// sure is a figure without chance, exact to its tolerance.
	sure
)

// figure is one exact value and what is compared with it.
type figure struct {
	quantity, source, known string
	// published is the figure of the source where the value is a more exact one.
	published string
	exact     float64
	kind      kind
	of        measure
	// share says that the figure is a probability.
	share bool
	// allowance is how far the line is from the model by its nature.
	allowance float64
	// tolerance, compute and says are those of a sure figure; says is the verdict of one
	// that agrees, where "exact" is not the word.
	tolerance float64
	compute   sureValue
	says      string
	// drawn says that the value is itself drawn, by the source or for this table.
	drawn bool
}

// sureValue computes the value of a figure without chance.
type sureValue func() (float64, error)

// measure reads a figure from a record as part and whole: the figure is the quotient of
// their sums over the replications.
type measure func(*sim.Record) (part, whole float64)

// sim starts a case of this entry. Times are in its unit; the window is ten warm-ups.
func (e *entry) sim(model, mapping string, line sim.Line, warmUp float64) *Case {
	c := &Case{
		Name: e.name, Family: e.family, entry: e.name, Model: model, Mapping: mapping, line: line,
		warmUp: e.micros(warmUp), measure: e.micros(10 * warmUp), least: 40, unit: e.unit,
	}
	e.cases = append(e.cases, c)
	return c
}

// compare adds the figures of a quantity: one measure for each of its values. The first
// quantity of a case is its primary one.
func (e *entry) compare(c *Case, quantity string, of ...measure) {
	e.figures(c, quantity, figure{}, of...)
}

// shares is compare for probabilities.
func (e *entry) shares(c *Case, quantity string, of ...measure) {
	e.figures(c, quantity, figure{share: true}, of...)
}

func (e *entry) figures(c *Case, quantity string, like figure, of ...measure) {
	i := slices.IndexFunc(e.values, func(v *value) bool { return v.quantity == quantity && !e.used[v] })
	if i < 0 {
		return
	}
	v := e.values[i]
	e.use(v)
	exact, err := v.numbers()
	e.fail(err)
	for k, x := range exact {
		f := like
		f.quantity, f.source, f.known, f.exact, f.of = quantity, v.source, v.known, x, of[min(k, len(of)-1)]
		if len(exact) == 1 && v.published != v.text {
			f.published = v.published
		}
		if len(exact) > 1 {
			f.quantity += nth(k)
		}
		c.figures = append(c.figures, &f)
	}
}

func nth(i int) string { return fmt.Sprintf(" of %d", i+1) }
