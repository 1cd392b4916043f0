package scenario

import (
	"reflect"
	"strings"
	"sync"
)

// vocabulary is the words that a place of the file knows, made from the tags of
// a struct: yaml is the word, about its meaning, eg an example, need:"yes" says
// that it has to be there, least, above and most are its range.
type vocabulary struct {
	// section names the place: "a station".
	section string
	words   []word
	// rest is the field that takes names, or -1.
	rest int
}

type word struct {
	name  string
	field int
	tag   reflect.StructTag
}

func (w word) eg() string { return w.tag.Get("eg") }

// sectioned is implemented by every struct of words.
type sectioned interface{ section() string }

var vocabularies sync.Map

// wordsOf lists the words of a struct type.
func wordsOf(t reflect.Type) vocabulary {
	if known, ok := vocabularies.Load(t); ok {
		return known.(vocabulary)
	}
	v := vocabulary{rest: -1, section: reflect.New(t).Interface().(sectioned).section()}
	for i := range t.NumField() {
		tag := t.Field(i).Tag
		switch name := tag.Get("yaml"); name {
		case "":
		case "*":
			v.rest = i
		default:
			v.words = append(v.words, word{name, i, tag})
		}
	}
	vocabularies.Store(t, v)
	return v
}

func (v vocabulary) names() []string {
	names := make([]string, len(v.words))
	for i, w := range v.words {
		names[i] = w.name
	}
	return names
}

func (v vocabulary) find(name string) (word, bool) {
	for _, w := range v.words {
		if w.name == name {
			return w, true
		}
	}
	return word{}, false
}

// unknown says what to do about a key that is not known here. It returns the
// word that was probably meant.
func (r *reader) unknown(where at, known vocabulary, key string) (meant string) {
	article := known.section
	switch near, found := Nearest(key, known.names()); {
	case isLater(known.section, key):
		r.later(where, key)
	case isLater("", key):
		r.later(where, key)
	case len(placesOf(key)) > 0:
		r.complain(where, "%q is a word of %s, not of %s", key, strings.Join(placesOf(key), ", of "), article)
	case found:
		r.complain(where, "%q is not a word of %s; did you mean %q?", key, article, near)
		return near
	default:
		r.complain(where, "%q is not a word of %s; it knows %s", key, article, strings.Join(known.names(), ", "))
	}
	return ""
}

// placesOf lists the places that know a word.
func placesOf(key string) []string {
	var places []string
	for _, t := range wordTypes {
		if _, found := wordsOf(t).find(key); found {
			places = append(places, wordsOf(t).section)
		}
	}
	return places
}
