package report

import (
	"fmt"
	"html/template"
	"slices"
	"strings"
)

// header runs on top and at the bottom of every printed page.
type header struct{ Left, Right, Foot template.CSS }

func headerOf(in Page) header {
	s := in.Outcome.Scenario
	return header{
		Left:  cssString(joined(s.Project.Number, s.Title)),
		Right: cssString(joined(labelled("revision", s.Project.Revision), labelled("status", s.Project.Status))),
		Foot:  cssString(joined(labelled("hash", in.Outcome.Results.ScenarioHash), labelled("version", in.Version))),
	}
}

// labelled is the value with its word before it, or nothing.
func labelled(word, value string) string {
	if value == "" {
		return ""
	}
	return say("header."+word, facts{"Value": value})
}

// joined puts a middle dot between those that are not empty.
func joined(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "" }), " · ")
}

// cssString is a text as a string of a style sheet. All but letters, digits
// and spaces is written as a code point: the text is somebody else's, and the
// template package would take "status: draft" for an address and drop it.
func cssString(text string) template.CSS {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		if r == ' ' || ('0' <= r && r <= '9') || ('a' <= r && r <= 'z') || ('A' <= r && r <= 'Z') {
			b.WriteRune(r)
			continue
		}
		fmt.Fprintf(&b, "\\%06x ", r)
	}
	b.WriteByte('"')
	return template.CSS(b.String())
}
