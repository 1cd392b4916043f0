package scenario

import (
	"reflect"
	"strings"

	"tuckline/internal/scenario/tree"
)

// setSource is the name of the command line in complaints.
const setSource = "--set"

// applySets changes single values, in the tree and in the text.
func (r *reader) applySets(root *tree.Node, text string, sets []string) string {
	for _, set := range sets {
		path, _, found := strings.Cut(set, "=")
		src := &tree.Source{Name: setSource, Text: set}
		where := at{&tree.Node{Line: 1, Column: 1, From: src}, strings.TrimSpace(path)}
		if !found {
			r.complain(where, "a change is written as PATH=VALUE, such as cartoner.cycle=90/min")
			continue
		}
		if strings.TrimSpace(set[len(path)+1:]) == "" {
			r.complain(where, "a value is missing after %q", "=")
			continue
		}
		value, faults := tree.ParseValue(setSource, set, len(path)+1)
		for _, f := range faults {
			r.complain(at{f.At, where.path}, "%s", f.Text)
		}
		w := &pathWalk{r: r, where: where, root: root}
		if len(faults) > 0 || !w.walk() {
			continue
		}
		text = w.put(text, value)
	}
	return text
}

// put writes the value at all places to which the path leads.
func (w *pathWalk) put(text string, value *tree.Node) string {
	for _, steps := range append(w.more, w.steps) {
		edited, done := tree.Edit(text, steps, value)
		if !tree.Put(w.root, steps, value) || !done {
			w.r.complain(w.where, "%q cannot be changed from here; change it in the file", w.where.path)
			return text
		}
		text = edited
	}
	return text
}

// pathWalk follows a path through the words of the format and the file at once.
type pathWalk struct {
	r     *reader
	where at
	root  *tree.Node
	steps []tree.Step
	// entry is how many of them lead to an entry of a line.
	entry int
	// more are the other places, of a bare name that several lines have.
	more [][]tree.Step
	// walked are the names so far.
	walked []string
}

// walk finds the steps of the path, or complains with the nearest right one.
func (w *pathWalk) walk() bool {
	names := strings.Split(w.where.path, ".")
	for i := range names {
		names[i] = strings.TrimSpace(names[i])
	}
	node, kind := w.root, reflect.TypeFor[fileWords]()
	if lines, found := w.root.Get("lines"); found && lines.Kind == tree.Map {
		if done, well := w.walkLines(lines, names); done {
			return well
		}
	}
	if line, found := w.root.Get("line"); found && line.Kind == tree.List {
		for i, full := range quietly(w.r, func() []*tree.Node { return w.r.likened(line) }) {
			_, name := kindOf(full)
			switch {
			case name == "":
			case name == names[0]:
				w.steps, w.entry = []tree.Step{{Key: "line"}, {Item: i}}, 2
				return w.down(full, entryType(full), names[1:], names[:1])
			case names[0] == lanesOf(name) && hasKey(full, "lanes"):
				w.r.complain(w.where, "%q are written inside of %q; their words are rate, holds and stops, such as %q", names[0], name, name+".lanes.rate")
				return false
			}
		}
	}
	return w.down(node, kind, names, nil)
}

// quietly runs something whose complaints are made again later.
func quietly[T any](r *reader, f func() T) T {
	before := len(r.complaints)
	defer func() { r.complaints = r.complaints[:before] }()
	return f()
}

func entryType(n *tree.Node) reflect.Type {
	switch kind, _ := kindOf(n); kind {
	case "conveyor":
		return reflect.TypeFor[conveyorWords]()
	case "buffer":
		return reflect.TypeFor[bufferWords]()
	}
	return reflect.TypeFor[stationWords]()
}

// down goes on from a node of a type of words; node is nil where nothing is written yet.
func (w *pathWalk) down(node *tree.Node, kind reflect.Type, names, walked []string) bool {
	w.walked = walked
	if len(names) == 0 {
		if len(w.steps) > 1 && len(w.steps) == w.entry {
			path := strings.Join(walked, ".")
			w.r.complain(w.where, "%q is a whole entry; say which of its words, such as %s", path, path+"."+wordsOf(kind).words[3].name)
			return false
		}
		return true
	}
	name, next := names[0], append(walked[:len(walked):len(walked)], names[0])
	child, inside, known := w.child(node, kind, name)
	if inside == nil {
		w.refuse(node, name, names[1:], known)
		return false
	}
	w.steps = append(w.steps, tree.Step{Key: name})
	return w.down(child, inside, names[1:], next)
}

// child finds the value and the type behind a name; known are the right names.
func (w *pathWalk) child(node *tree.Node, kind reflect.Type, name string) (child *tree.Node, inside reflect.Type, known []string) {
	child, found := node.Get(name)
	into := reflect.New(kind).Interface()
	if many, ok := into.(container); ok {
		if many.byName() {
			if found {
				return child, many.elem(), nil
			}
			return nil, nil, keysOf(node)
		}
		if node != nil && node.Kind != tree.Map {
			return nil, nil, nil
		}
		return w.child(node, many.elem(), name)
	}
	if _, ok := into.(sectioned); ok && (node == nil || node.Kind == tree.Map) {
		return w.childOfStruct(node, kind, name)
	}
	if found && node.Kind == tree.Map { // the parameters of a law, the ends of a guess
		return child, reflect.TypeFor[text](), nil
	}
	return nil, nil, keysOf(node)
}

func (w *pathWalk) childOfStruct(node *tree.Node, kind reflect.Type, name string) (*tree.Node, reflect.Type, []string) {
	words := wordsOf(kind)
	child, _ := node.Get(name)
	if word, ok := words.find(name); ok {
		return child, kind.Field(word.field).Type, nil
	}
	if words.rest >= 0 {
		return child, reflect.New(kind.Field(words.rest).Type).Interface().(container).elem(), nil
	}
	known := words.names()
	if kind == reflect.TypeFor[fileWords]() {
		line, _ := node.Get("line")
		for _, item := range itemsOf(line) {
			_, entry := kindOf(item)
			known = append(known, entry)
		}
		if lines, found := node.Get("lines"); found {
			known = append(known, w.namesOfLines(lines)...)
		}
	}
	return nil, nil, known
}

func keysOf(n *tree.Node) []string {
	if n == nil {
		return nil
	}
	return n.Keys()
}

func itemsOf(n *tree.Node) []*tree.Node {
	if n == nil {
		return nil
	}
	return n.Items
}

// refuse says that a path leads nowhere, with the nearest one that does.
func (w *pathWalk) refuse(node *tree.Node, name string, left, known []string) {
	before := strings.Join(w.walked, ".")
	near, found := Nearest(name, known)
	switch {
	case before == "" && isLater("a scenario", name):
		w.r.later(w.where, name)
	case found:
		right := strings.Join(append(append(w.walked[:len(w.walked):len(w.walked)], near), left...), ".")
		w.r.complain(w.where, "nothing is called %q here; did you mean %q?", name, right)
	case node != nil && node.Kind == tree.List:
		w.r.complain(w.where, "%q is a list, whose items have no names; set the whole list", before)
	case node != nil && node.Kind == tree.Scalar && strings.HasPrefix(before, "crews.") && name != "people":
		w.r.complain(w.where, "%q is a single value, %s; set it as a whole, such as %s={people: %s, %s: …}", before, node.Text, before, node.Text, name)
	case node != nil && node.Kind == tree.Scalar:
		w.r.complain(w.where, "%q is a single value, %s; set it as a whole", before, node.Text)
	case len(known) > 0 && before != "":
		w.r.complain(w.where, "nothing is called %q in %q; there is %s", name, before, strings.Join(known, ", "))
	case len(known) > 0:
		w.r.complain(w.where, "nothing is called %q; there is %s", name, strings.Join(known, ", "))
	default:
		w.r.complain(w.where, "there is nothing below %q", before)
	}
}
