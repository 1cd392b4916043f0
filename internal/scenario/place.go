package scenario

import "tuckline/internal/scenario/tree"

// at is where a value of the file stands. Every type of words has one.
type at struct {
	node *tree.Node
	path string
}

// given says that the value was written.
func (a at) given() bool { return a.node != nil }

func (a *at) put(n *tree.Node, path string) { a.node, a.path = n, path }

// text is what was written there, for complaints.
func (a at) text() string {
	if a.node == nil {
		return ""
	}
	return a.node.Text
}

func (a at) line() int {
	if a.node == nil {
		return 0
	}
	return a.node.Line
}

// or is the first of two places that was written.
func (a at) or(other at) at {
	if a.given() {
		return a
	}
	return other
}

// placed is anything that knows where it stands.
type placed interface {
	put(n *tree.Node, path string)
}

// join makes a path longer.
func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
