package tree

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Step leads one level down: to the value of a key, or, with Key empty, to an
// item of a list.
type Step struct {
	Key  string
	Item int
}

// ParseValue reads the value of "PATH=VALUE"; places are those in the whole text.
func ParseValue(name, whole string, begins int) (*Node, []Fault) {
	root, faults := Parse(name, []byte(whole[begins:]))
	if root == nil {
		root = &Node{Kind: Null, Line: 1, Column: 1}
	}
	src := &Source{Name: name, Text: whole}
	shift := utf8.RuneCountInString(whole[:begins])
	root.move(src, shift)
	for _, f := range faults {
		f.At.move(src, shift)
	}
	return root, faults
}

// move places a node, with all below it, into a longer text.
func (n *Node) move(src *Source, shift int) {
	if n.From == src {
		return
	}
	n.From, n.start, n.end = src, 0, -1
	if n.Line == 1 {
		n.Column += shift
	}
	for _, e := range n.Entries {
		e.Key.move(src, shift)
		e.Value.move(src, shift)
	}
	for _, item := range n.Items {
		item.move(src, shift)
	}
}

// Put sets a value below a root, adding the keys that are missing. It reports
// whether there was a way.
func Put(root *Node, steps []Step, value *Node) bool {
	at, left := descend(root, steps)
	switch {
	case len(left) == 0 || at == nil:
		return false
	case left[0].Key == "" || at.Kind != Map:
		return false
	}
	key := left[0].Key
	for i := range at.Entries {
		if at.Entries[i].Key.Text == key {
			at.Entries[i].Value = value
			return true
		}
	}
	at.Entries = append(at.Entries, Entry{word(key, value), nest(left[1:], value)})
	return true
}

// descend follows the steps as far as there is something; the last step is
// always left, since it is what is set.
func descend(n *Node, steps []Step) (at *Node, left []Step) {
	for i, step := range steps {
		if i == len(steps)-1 {
			return n, steps[i:]
		}
		next, found := n.step(step)
		if !found {
			return n, steps[i:]
		}
		n = next
	}
	return n, nil
}

func (n *Node) step(s Step) (*Node, bool) {
	if s.Key != "" {
		return n.Get(s.Key)
	}
	if n.Kind != List || s.Item < 0 || s.Item >= len(n.Items) {
		return nil, false
	}
	return n.Items[s.Item], true
}

// nest puts a value below new keys.
func nest(steps []Step, value *Node) *Node {
	for _, s := range slices.Backward(steps) {
		value = &Node{
			Kind: Map, Flow: true, Entries: []Entry{{word(s.Key, value), value}},
			Line: value.Line, Column: value.Column, From: value.From, end: -1,
		}
	}
	return value
}

// word makes a key that stands where the value does.
func word(key string, value *Node) *Node {
	return &Node{Kind: Scalar, Text: key, Line: value.Line, Column: value.Column, From: value.From, end: -1}
}

// Render writes a node as YAML in one line.
func (n *Node) Render() string {
	var parts []string
	switch n.Kind {
	case Map:
		for _, e := range n.Entries {
			parts = append(parts, e.Key.Render()+": "+e.Value.Render())
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case List:
		for _, item := range n.Items {
			parts = append(parts, item.Render())
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case Null:
		return "null"
	}
	if n.Quoted || !plain(n.Text) {
		return quoted(n.Text)
	}
	return n.Text
}

// plain says whether a text needs no quotes inside brackets.
func plain(text string) bool {
	switch {
	case text == "" || strings.TrimSpace(text) != text || strings.ContainsAny(text, ",[]{}#:\"'&*!|>@`\\\n\r\t"):
		return false
	case strings.ContainsAny(text[:1], "%?-~=<"):
		return false
	}
	return !slices.Contains([]string{"null", "Null", "NULL"}, text)
}

var escapes = strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\r", `\r`, "\t", `\t`)

func quoted(text string) string { return `"` + escapes.Replace(text) + `"` }
