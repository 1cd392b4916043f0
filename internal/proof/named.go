package proof

import (
	"errors"
	"fmt"
	"slices"

	"tuckline/internal/scenario"
)

// ErrCaseName says that a name is none of a case that can be compared.
var ErrCaseName = errors.New("the name of a case is wrong")

// caseFault is what is wrong with a name, in words.
type caseFault string

func (f caseFault) Error() string { return string(f) }

func (f caseFault) Unwrap() error { return ErrCaseName }

// named are the cases of these names, in the order of all, and what is left out of the entries
// that they come from. An error tells of each name that is left out, with the reason, or unknown.
func named(cases []*Case, leftOut []LeftOut, names []string) ([]*Case, []LeftOut, error) {
	var found []*Case
	var known, entries []string
	for _, c := range cases {
		known = append(known, c.Name)
		if slices.Contains(names, c.Name) {
			found, entries = append(found, c), append(entries, c.entry)
		}
	}
	var errs []error
	for _, name := range names {
		if !slices.Contains(known, name) {
			errs = append(errs, wrongName(name, known, leftOut))
		}
	}
	rest := []LeftOut{}
	for _, l := range leftOut {
		if slices.Contains(entries, l.entry) {
			rest = append(rest, l)
		}
	}
	return found, rest, errors.Join(errs...)
}

func wrongName(name string, known []string, leftOut []LeftOut) error {
	for _, l := range leftOut {
		if l.Case == name {
			return caseFault(fmt.Sprintf("%q is left out of the proof: %s", name, l.Reason))
		}
	}
	if near, is := scenario.Nearest(name, known); is {
		return caseFault(fmt.Sprintf("there is no case %q; did you mean %q?", name, near))
	}
	return caseFault(fmt.Sprintf("there is no case %q", name))
}

// entriesOf are the reference cases that some cases come from.
func entriesOf(cases []*Case) []entryName {
	var all []entryName
	for _, c := range cases {
		if e := (entryName{c.Family, c.entry}); !slices.Contains(all, e) {
			all = append(all, e)
		}
	}
	return all
}
