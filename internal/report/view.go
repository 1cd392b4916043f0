package report

import (
	"html/template"
	"slices"
	"strings"

	"tuckline/internal/study"
)

// view is what the page template shows.
type view struct {
	First    first
	Sections []section
	Looks    []stateLook
	Engine   template.HTML
	Header   header
}

// section is one statement with its charts and the table folded below them.
type section struct {
	ID, Heading, Reading string
	Charts               []chart
	Table                table
}

// chart is one drawing; Height is in pixels.
type chart struct {
	ID     string
	Height int
	Option template.JS
}

// header runs on top and at the bottom of every printed page.
type header struct{ Left, Right, Foot string }

// maker makes one section; nil means that there is nothing to show.
type maker func(*study.Outcome, window) (*section, error)

// sections are in the order of the product's way along the line.
var sections = []maker{statesSection}

func viewOf(in Page) (*view, error) {
	o := in.Outcome
	w := windowOf(o.Scenario)
	v := &view{First: firstOf(o, w), Looks: looks, Header: headerOf(in)}
	for _, make := range sections {
		s, err := make(o, w)
		if err != nil {
			return nil, err
		}
		if s != nil {
			v.Sections = append(v.Sections, *s)
		}
	}
	return v, nil
}

func headerOf(in Page) header {
	s := in.Outcome.Scenario
	return header{
		Left:  joined(s.Project.Client, s.Project.Number, s.Title),
		Right: joined(labelled("revision", s.Project.Revision), labelled("status", s.Project.Status)),
		Foot:  joined(labelled("hash", in.Outcome.Results.ScenarioHash), labelled("version", in.Version)),
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
