package scenario

import (
	"reflect"
	"strconv"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
)

// stepPace is the speed of a speed step: top speed, or a speed.
type stepPace struct {
	pace
	top bool
}

func (p *stepPace) read(r *reader, n *tree.Node, path string, tag reflect.StructTag) {
	if n.Kind == tree.Scalar && n.Text == "top speed" {
		p.top = true
		return
	}
	p.pace.read(r, n, path, tag)
}

// span is a range of times in microseconds.
type span struct {
	at
	low, high float64
}

func (s *span) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	text, ok := r.scalar(s.at, n)
	if !ok {
		return
	}
	low, high, err := quantity.Span(text)
	if err == nil && low <= 0 {
		r.complain(s.at, "%q is out of range; both ends must be more than 0 s", text)
	}
	if err != nil {
		r.complain(s.at, "%v", err)
	}
	s.low, s.high = low, high
}

// crewNeed is who is asked: NAME, or 2 NAME.
type crewNeed struct {
	at
	people int
	crew   string
}

func (c *crewNeed) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	text, ok := r.scalar(c.at, n)
	if !ok {
		return
	}
	c.people, c.crew = 1, text
	head, name, found := strings.Cut(text, " ")
	if people, err := strconv.Atoi(head); err == nil && found {
		c.people, c.crew = people, strings.TrimSpace(name)
	}
	if c.people < 1 {
		r.complain(c.at, "%q asks for nobody; leave the key out, or write 1 or more", text)
	}
}

// read takes a bare number of people too.
func (c *crewWords) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	if n.Kind == tree.Scalar {
		word, _ := wordsOf(reflect.TypeFor[crewWords]()).find("people")
		c.People.put(n, path)
		c.People.read(r, n, path, word.tag)
		return
	}
	r.decodeStruct(n, reflect.ValueOf(c).Elem(), path)
}

// fromWords is what feeds an entry: names, or supply.
type fromWords struct {
	at
	names  []text
	supply bool
	// limit is that of a finite supply.
	limit count
}

func (f *fromWords) read(r *reader, n *tree.Node, path string, _ reflect.StructTag) {
	if n.Kind == tree.Map {
		f.readSupply(r, n, path)
		return
	}
	var names oneOrMore[text]
	names.at = f.at
	names.read(r, n, path, "")
	f.names = names.list
	if len(f.names) == 1 && f.names[0].value == "supply" {
		f.names, f.supply = nil, true
	}
	for i, one := range f.names {
		for _, other := range f.names[:i] {
			if one.value == other.value && one.value != "" {
				r.complain(one.at, "%q is named twice", one.value)
			}
		}
	}
}

func (f *fromWords) readSupply(r *reader, n *tree.Node, path string) {
	f.supply = true
	amount, found := n.Get("supply")
	if !found || len(n.Entries) != 1 {
		r.complain(f.at, "what feeds it is a name, a list of names, supply, or {supply: 252000 blisters}")
		return
	}
	f.limit.put(amount, join(path, "supply"))
	f.limit.read(r, amount, path, `least:"1"`)
}

// lineWords is the entries of the line, each of one of three kinds.
type lineWords struct {
	at
	entries []*entryWords
}

// entryWords is one entry: exactly one of the three is not nil.
type entryWords struct {
	at
	name     text
	line     string // of several
	station  *stationWords
	conveyor *conveyorWords
	buffer   *bufferWords
	// lanes says of a buffer that nobody wrote it: it is the places of lanes.
	lanes bool
}

func (l *lineWords) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	if n.Kind != tree.List {
		r.complain(l.at, "the line is a list; each entry begins with a dash: - station: NAME")
		return
	}
	if len(n.Items) == 0 {
		r.complain(l.at, "the line is empty; write at least one - station: NAME")
	}
	items := r.likened(n)
	for i, item := range items {
		if e := r.readEntry(n.Items[i], item, ""); e != nil {
			l.entries = append(l.entries, e)
		}
	}
	r.checkNames(l.entries)
}

// entryKinds are the words that an entry begins with.
var entryKinds = []string{"station", "conveyor", "buffer"}

// kindOf finds the kind and the name of an entry.
func kindOf(n *tree.Node) (kind, name string) {
	for _, kind := range entryKinds {
		if name, found := n.Get(kind); found {
			return kind, name.Text
		}
	}
	return "", ""
}

// readEntry reads one entry; written is as in the file, n with what like: copies. line is its name, of several.
func (r *reader) readEntry(written, n *tree.Node, line string) *entryWords {
	kind, name := kindOf(n)
	name = join(line, name)
	e := &entryWords{at: at{written, name}}
	if n.Kind != tree.Map || kind == "" {
		r.notAnEntry(e.at, n)
		return nil
	}
	switch kind {
	case "station":
		e.station = &stationWords{}
		r.decode(n, e.station, name, "")
		e.name = e.station.Name
	case "conveyor":
		e.conveyor = &conveyorWords{}
		r.decode(n, e.conveyor, name, "")
		e.name = e.conveyor.Name
	case "buffer":
		e.buffer = &bufferWords{}
		r.decode(n, e.buffer, name, "")
		e.name = e.buffer.Name
	}
	return e
}

func (r *reader) notAnEntry(where at, n *tree.Node) {
	if n.Kind == tree.Map && len(n.Entries) > 0 {
		first := n.Entries[0].Key
		if near, found := Nearest(first.Text, entryKinds); found {
			r.complain(at{first, ""}, "an entry of the line begins with station, conveyor or buffer; did you mean %q?", near)
			return
		}
	}
	r.complain(where, "an entry of the line is a station, a conveyor or a buffer: - station: NAME")
}
