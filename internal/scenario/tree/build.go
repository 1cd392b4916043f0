package tree

import (
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"
)

// builder turns the library's tree into ours.
type builder struct {
	src    *Source
	lines  []int
	faults []Fault
}

func lineStarts(text string) []int {
	starts := []int{0}
	for i := range len(text) {
		if text[i] == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// offset is the byte of a line and column, both from 1.
func (b *builder) offset(line, column int) int {
	if line < 1 || line > len(b.lines) {
		return len(b.src.Text)
	}
	at := b.lines[line-1]
	for range column - 1 {
		_, size := utf8.DecodeRuneInString(b.src.Text[at:])
		at += size
	}
	return min(at, len(b.src.Text))
}

func (b *builder) fault(at *Node, text string) {
	b.faults = append(b.faults, Fault{at, text})
}

// place makes a node of a kind yet unknown at the beginning of an AST node.
func (b *builder) place(n ast.Node) *Node {
	tk := n.GetToken()
	if m, ok := n.(*ast.MappingNode); ok && !m.IsFlowStyle && len(m.Values) > 0 {
		tk = m.Values[0].Key.GetToken()
	}
	if m, ok := n.(*ast.MappingValueNode); ok {
		tk = m.Key.GetToken()
	}
	if tk == nil || tk.Position == nil {
		return b.at(1, 1)
	}
	node := b.at(tk.Position.Line, tk.Position.Column)
	node.start = b.offset(node.Line, node.Column)
	return node
}

func (b *builder) body(doc *ast.DocumentNode) *Node {
	if doc.Body == nil {
		return nil
	}
	return b.node(doc.Body)
}

// node converts one value with all that is below it.
func (b *builder) node(n ast.Node) *Node {
	node := b.place(n)
	switch n := n.(type) {
	case *ast.MappingNode:
		b.mapping(node, n)
	case *ast.MappingValueNode:
		node.Kind = Map
		b.entry(node, n)
	case *ast.SequenceNode:
		b.list(node, n)
	case *ast.NullNode:
		b.null(node)
	case *ast.LiteralNode:
		node.Kind, node.Quoted = Scalar, true
		node.Text = strings.TrimSpace(n.Value.Value)
	case *ast.AnchorNode, *ast.AliasNode:
		node.Kind = Broken
		b.fault(node, "anchors and aliases are not read; like: NAME copies an entry of the line")
	case *ast.TagNode:
		node.Kind = Broken
		b.fault(node, "tags are not read; leave it out")
	case ast.ScalarNode:
		b.scalar(node, n)
	default:
		node.Kind = Broken
		b.fault(node, "this kind of YAML is not read")
	}
	return node
}

func (b *builder) mapping(node *Node, m *ast.MappingNode) {
	node.Kind, node.Flow = Map, m.IsFlowStyle
	for _, v := range m.Values {
		b.entry(node, v)
	}
	if m.IsFlowStyle && m.End != nil {
		node.end = b.offset(m.End.Position.Line, m.End.Position.Column) + 1
	}
}

func (b *builder) entry(node *Node, v *ast.MappingValueNode) {
	var key *Node
	switch k := v.Key.(type) {
	case *ast.MergeKeyNode:
		b.fault(b.place(k), "merge keys are not read; like: NAME copies an entry of the line")
		return
	case *ast.MappingKeyNode:
		b.fault(b.place(k), "keys with a question mark are not read; write key: value")
		return
	default:
		key = b.node(k)
	}
	if key.Kind == Null { // the word null as a key
		key.Kind, key.Text = Scalar, v.Key.GetToken().Value
	}
	if key.Kind != Scalar {
		b.fault(key, "a key is a single word or name")
		return
	}
	value := b.at(key.Line, key.Column)
	value.start = key.start
	if v.Value != nil {
		value = b.node(v.Value)
	}
	node.Entries = append(node.Entries, Entry{key, value})
	if !node.Flow {
		node.end = value.end
	}
}

func (b *builder) list(node *Node, s *ast.SequenceNode) {
	node.Kind, node.Flow = List, s.IsFlowStyle
	for _, v := range s.Values {
		item := b.node(v)
		node.Items = append(node.Items, item)
		if !s.IsFlowStyle {
			node.end = item.end
		}
	}
	if s.IsFlowStyle && s.End != nil {
		node.end = b.offset(s.End.Position.Line, s.End.Position.Column) + 1
	}
}

// null is either a word, or nothing at all: then it has no length.
func (b *builder) null(node *Node) {
	node.Kind, node.end = Null, node.start
	for _, word := range []string{"null", "Null", "NULL", "~"} {
		if strings.HasPrefix(b.src.Text[node.start:], word) {
			node.end = node.start + len(word)
		}
	}
}

func (b *builder) scalar(node *Node, n ast.ScalarNode) {
	tk := n.GetToken()
	node.Kind, node.Text = Scalar, tk.Value
	rest := b.src.Text[node.start:]
	switch {
	case strings.HasPrefix(rest, `"`) || strings.HasPrefix(rest, "'"):
		node.Quoted = true
		node.end = node.start + quotedLength(rest)
	case strings.HasPrefix(rest, tk.Value):
		node.end = node.start + len(tk.Value)
	}
}

// quotedLength is the number of bytes from a quote to its partner.
func quotedLength(text string) int {
	quote := text[0]
	for i := 1; i < len(text); i++ {
		switch {
		case quote == '"' && text[i] == '\\':
			i++
		case quote == '\'' && text[i] == '\'' && i+1 < len(text) && text[i+1] == '\'':
			i++
		case text[i] == quote:
			return i + 1
		}
	}
	return len(text)
}
