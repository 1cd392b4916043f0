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

func (a at) where() at { return a }

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
