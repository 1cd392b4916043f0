package scenario

import (
	"reflect"
	"slices"
	"strings"

	"tuckline/internal/scenario/tree"
)

// linesWords are several lines, by name.
type linesWords struct {
	at
	list []namedLine
}

// namedLine is one of them; the names of its entries begin with its own.
type namedLine struct {
	name    string
	entries []*entryWords
}

func (l *linesWords) read(r *reader, n *tree.Node, _ string, _ reflect.StructTag) {
	if n.Kind != tree.Map {
		r.complain(l.at, "this is %s; here belong lines by name, each with its entries: line 1: [{station: filler, cycle: 60/min}]", n.KindWord())
		return
	}
	if len(n.Entries) == 0 {
		r.complain(l.at, "there is no line; write at least one, or line: in place of lines:")
	}
	names := n.Keys()
	for _, full := range r.fullLines(n) {
		line := namedLine{name: full.name}
		r.checkLineName(full)
		for i, item := range full.items {
			if e := r.readEntry(full.written[i], item, full.name); e != nil {
				line.entries = append(line.entries, e)
			}
		}
		r.checkNames(line.entries)
		r.notLikeLines(line.entries, names)
		for _, e := range line.entries {
			e.putInto(full.name, names)
		}
		l.list = append(l.list, line)
	}
}

// checkLineName refuses names with which no path could begin.
func (r *reader) checkLineName(full fullLine) {
	where := at{full.key, full.name}
	r.checkName(where, full.name)
	if slices.Contains(reserved, full.name) {
		r.complain(where, "%q is a word of the format and cannot be the name of a line", full.name)
	}
}

// notLikeLines refuses entries that are called like a line: paths begin with either.
func (r *reader) notLikeLines(entries []*entryWords, lines []string) {
	for _, e := range entries {
		if slices.Contains(lines, e.name.value) {
			r.complain(e.name.at, "%q is the name of a line; name this entry differently", e.name.value)
		}
	}
}

// putInto makes the names of an entry and of those that it has to do with names of the model: a bare name
// means the own line. The name of a station whose random numbers it draws is of another layout.
func (e *entryWords) putInto(line string, lines []string) {
	e.line = line
	full := func(name *string) {
		if *name != "" && lineOf(*name, lines) == "" {
			*name = line + "." + *name
		}
	}
	full(&e.name.value)
	from := e.from()
	for i := range from.names {
		if from.names[i].value != "supply" {
			full(&from.names[i].value)
		}
	}
	switch {
	case e.station != nil:
		s := e.station
		full(&s.Name.value)
		full(&s.StopsWith.value)
		full(&s.Coupled.value)
		for i := range s.Takes.inputs {
			full(&s.Takes.inputs[i].name)
		}
		for i := range s.Sends.To.list {
			full(&s.Sends.To.list[i].value)
		}
	case e.conveyor != nil:
		full(&e.conveyor.Name.value)
		full(&e.conveyor.Turns.first)
	default:
		full(&e.buffer.Name.value)
		full(&e.buffer.Turns.first)
	}
}

// lineOf is the line with which a name or a path begins, or "".
func lineOf(path string, lines []string) string {
	for _, line := range lines {
		if strings.HasPrefix(path, line+".") {
			return line
		}
	}
	return ""
}
