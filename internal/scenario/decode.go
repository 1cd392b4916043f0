package scenario

import (
	"maps"
	"reflect"
	"strings"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario/tree"
)

// leaf is a type of words that reads itself; the tag is that of its field.
type leaf interface {
	read(r *reader, n *tree.Node, path string, tag reflect.StructTag)
}

// decode reads a node into a pointer to words: structs key by key, the rest by
// the read method of its type.
func (r *reader) decode(n *tree.Node, into any, path string, tag reflect.StructTag) {
	r.index[path] = n
	if p, ok := into.(placed); ok {
		p.put(n, path)
	}
	if n.Kind == tree.Broken {
		return
	}
	if l, ok := into.(leaf); ok {
		l.read(r, n, path, tag)
		return
	}
	r.decodeStruct(n, reflect.ValueOf(into).Elem(), path)
}

// decodeStruct reads a map of the file, whose keys are the words of a struct.
func (r *reader) decodeStruct(n *tree.Node, into reflect.Value, path string) {
	known := wordsOf(into.Type())
	if n.Kind != tree.Map {
		r.complain(at{n, path}, "this is %s; here belong words with values: %s", n.KindWord(), strings.Join(known.names(), ", "))
		return
	}
	seen := map[string]bool{}
	// meant are words that were probably meant by others, so that they are not missing.
	meant := map[string]bool{}
	if n == r.root && hasKey(n, "lines") {
		meant["line"] = true
	}
	for i, e := range n.Entries {
		key := e.Key.Text
		word, found := known.find(key)
		switch {
		case seen[key]:
			r.complain(at{e.Key, join(path, key)}, "%q is written twice; one of them has to go", key)
		case !found && i > 0 && digitComma(n.Entries[i-1].Value, key):
			r.complain(at{e.Key, path}, "%v", quantity.ErrComma)
		case !found && known.rest >= 0:
			r.decodeRest(e, into.Field(known.rest).Addr().Interface().(rest), path)
		case !found:
			meant[r.unknown(at{e.Key, path}, known, key)] = true
		case e.Value.Kind == tree.Null:
			r.complain(at{e.Key, join(path, key)}, "%q has no value; write one%s, or leave the key out", key, such(word.eg()))
			into.Field(word.field).Addr().Interface().(placed).put(e.Value, join(path, key))
		default:
			r.decode(e.Value, into.Field(word.field).Addr().Interface(), join(path, key), word.tag)
		}
		seen[key] = true
	}
	maps.Copy(seen, meant)
	r.missing(n, known, seen, path)
}

// needs is the verb of a section: lanes need, a station needs.
func needs(section string) string {
	if strings.HasSuffix(section, "s") && section != "sends" && !strings.HasPrefix(section, "a ") {
		return "need"
	}
	return "needs"
}

func hasKey(n *tree.Node, key string) bool {
	_, found := n.Get(key)
	return found
}

// rest takes the keys of a struct that are names.
type rest interface {
	add(r *reader, e tree.Entry, path string)
}

func (r *reader) decodeRest(e tree.Entry, into rest, path string) { into.add(r, e, path) }

// missing complains about words that have to be there. An entry that copies
// another has what that one has, or was complained about.
func (r *reader) missing(n *tree.Node, known vocabulary, seen map[string]bool, path string) {
	for _, w := range known.words {
		if w.tag.Get("need") == "yes" && !seen[w.name] && !seen["like"] {
			r.complain(at{n, path}, "%s %s %q%s", known.section, needs(known.section), w.name, such(w.name+": "+w.eg()))
		}
	}
}

// digitComma recognises {holds: 2,000 blisters}, which YAML reads as two keys.
func digitComma(before *tree.Node, key string) bool {
	return key[:min(1, len(key))] >= "0" && key[:min(1, len(key))] <= "9" && before.Kind == tree.Scalar &&
		before.Text != "" && strings.ContainsAny(before.Text, "0123456789")
}

func such(example string) string {
	if example == "" || strings.HasSuffix(example, ": ") {
		return ""
	}
	return ", such as " + example
}
