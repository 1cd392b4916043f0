// Package tree keeps the syntax of a scenario file: what is written where. It
// reads YAML with a library, keeps the place of every value, and changes single
// values in the text without touching anything else, comments included.
package tree

import "strings"

// Kind is the kind of a node.
type Kind uint8

// The kinds.
const (
	// Scalar is one text; its meaning is the reader's business.
	Scalar Kind = iota
	// Map has keys with values, List has items.
	Map
	List
	// Null is nothing, or the words null and ~.
	Null
	// Broken is something that was complained about; nothing more is said of it.
	Broken
)

// Node is a value or a key with its place.
type Node struct {
	Kind Kind
	// Text is that of a scalar, without quotes.
	Text string
	// Quoted says that the scalar has quotes, Flow that a map or list has brackets.
	Quoted, Flow bool
	Entries      []Entry
	Items        []*Node
	// Line and Column, in letters, count from 1.
	Line, Column int
	// From is the text that the node stands in.
	From *Source
	// start and end are its bytes in From; end is -1 if it cannot be told.
	start, end int
}

// Entry is a key with its value.
type Entry struct{ Key, Value *Node }

// Source is a text with its name.
type Source struct {
	// Name is that of the file, or "--set" with its path.
	Name string
	Text string
}

// Line is the n-th line, counted from 1, without its end.
func (s *Source) Line(n int) string {
	lines := strings.Split(s.Text, "\n")
	if n < 1 || n > len(lines) {
		return ""
	}
	return strings.TrimRight(lines[n-1], "\r")
}

// Get finds the value of a key of a map.
func (n *Node) Get(key string) (*Node, bool) {
	if n == nil {
		return nil, false
	}
	for _, e := range n.Entries {
		if e.Key.Text == key {
			return e.Value, true
		}
	}
	return nil, false
}

// Keys lists the keys of a map as written.
func (n *Node) Keys() []string {
	keys := make([]string, 0, len(n.Entries))
	for _, e := range n.Entries {
		keys = append(keys, e.Key.Text)
	}
	return keys
}

// KindWord says what a node is, for complaints.
func (n *Node) KindWord() string {
	switch n.Kind {
	case Map:
		return "a group of words"
	case List:
		return "a list"
	case Null:
		return "nothing"
	}
	return "a single value"
}
