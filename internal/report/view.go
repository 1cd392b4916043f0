package report

import (
	"html/template"
	"slices"
	"strings"
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
	// Open shows the table unfolded, where there is no chart.
	Open bool
}

// chart is one drawing; Height is in pixels.
type chart struct {
	ID     string
	Height int
	Option template.JS
}

// header runs on top and at the bottom of every printed page.
type header struct{ Left, Right, Foot string }

// maker makes sections of one kind; none means that there is nothing to show.
type maker func(*subject) ([]section, error)

// sections are in the order of the product's way along the line.
var sections = []maker{
	one(outputSection), one(statesSection), one(waitsSection), levelSections, one(timelineSection),
	one(stopsSection), one(lossesSection), one(peopleSection), one(ratesSection), one(measuresSection),
}

func one(make func(*subject) (*section, error)) maker {
	return func(s *subject) ([]section, error) {
		made, err := make(s)
		if made == nil || err != nil {
			return nil, err
		}
		return []section{*made}, nil
	}
}

func viewOf(in Page) (*view, error) {
	s := subjectOf(in.Outcome)
	v := &view{First: firstOf(s), Looks: looks, Header: headerOf(in)}
	for _, make := range sections {
		made, err := make(s)
		if err != nil {
			return nil, err
		}
		v.Sections = append(v.Sections, made...)
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
