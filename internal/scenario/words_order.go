package scenario

import (
	"fmt"
	"reflect"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
)

// orderWords is an order: a batch, a number of batches, or good pieces.
type orderWords struct {
	at
	Batch      count      `yaml:"batch" least:"1" most:"10000000000" about:"What goes into a batch: tablets, capsules, blisters or cartons by the format sheet. It has to be whole cycles of the stations that begin the line." eg:"252000 blisters"`
	Good       count      `yaml:"good" least:"1" most:"10000000000" about:"Good pieces, in place of batch, counted where the answer counts: losses are made up for." eg:"60000 cartons"`
	Product    text       `yaml:"product" about:"Name of the product; another one needs another changeover. All are packed by the one format sheet. Without it: the name in product." eg:"ALDER-30"`
	Campaign   batches    `yaml:"campaign" least:"1" most:"1000" about:"So many batches in a row with the changeover same product between them; format comes after the last." eg:"3 batches"`
	Times      timesWords `yaml:"times" least:"1" most:"1000" about:"How often the batch, or the campaign, comes; without end: the whole list again and again, which all orders then have to say. Without it: once." eg:"4"`
	Due        weekClock  `yaml:"due" about:"Day and time at which all of it should be finished, with a calendar." eg:"Fri 14:00"`
	Changeover choice     `yaml:"changeover" of:"same product|format|full clean" about:"The changeover before the order and each of its campaigns. Without it: same product after the same product, format after another one and after a campaign." eg:"full clean"`
}

// changeoverWords are the changeovers.
type changeoverWords struct {
	at
	SameProduct setUpWords `yaml:"same product" about:"Between two batches of the same product, such as the line clearance." eg:"{lasts: 45 min, crew: 2 operators}"`
	Format      setUpWords `yaml:"format" about:"After a campaign, or to another product." eg:"{lasts: 180 min, crew: 2 operators}"`
	FullClean   setUpWords `yaml:"full clean" about:"Where an order says changeover: full clean." eg:"{lasts: 8 h, crew: 2 operators}"`
}

type setUpWords struct {
	at
	Lasts durationLaw `yaml:"lasts" need:"yes" about:"How long it lasts from when its people are there." eg:"45 min"`
	Crew  crewNeed    `yaml:"crew" about:"Who does it. Without it: nobody is needed." eg:"2 operators"`
}

func (*orderWords) section() string      { return "an order" }
func (*changeoverWords) section() string { return "changeover" }
func (*setUpWords) section() string      { return "a changeover" }

// find is the changeover of a word.
func (w *changeoverWords) find(word string) *setUpWords {
	return map[string]*setUpWords{sameProduct: &w.SameProduct, formatChange: &w.Format, fullClean: &w.FullClean}[word]
}

// The words of changeovers.
const (
	sameProduct  = "same product"
	formatChange = "format"
	fullClean    = "full clean"
)

// batches is a number of batches: 3 batches, or 3.
type batches struct{ count }

func (c *batches) read(r *reader, n *tree.Node, _ string, tag reflect.StructTag) {
	r.readNumber(&c.number, n, tag, func(text string) (float64, error) {
		pieces, err := quantity.ParseCount(text)
		if err != nil || pieces.Unit != "" && !quantity.SameUnit(pieces.Unit, "batches") {
			return 0, fmt.Errorf("%q is not a number of batches; write it as 3 batches", text)
		}
		return float64(pieces.N), nil
	})
}

// timesWords is how often something comes.
type timesWords struct {
	whole
	withoutEnd bool
}

func (t *timesWords) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	if n.Kind == tree.Scalar && n.Text == withoutEnd {
		t.withoutEnd = true
		return
	}
	if near, found := Nearest(n.Text, []string{withoutEnd}); found && n.Kind == tree.Scalar && len(n.Text) > 4 {
		r.complain(t.at, "%q is not known here; did you mean %q?", n.Text, near)
		return
	}
	t.whole.read(r, n, path, tag)
}

const withoutEnd = "without end"
