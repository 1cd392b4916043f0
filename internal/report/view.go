package report

import (
	"html/template"
)

// view is what the page template shows.
type view struct {
	First    first
	Sections []section
	End      ending
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

// maker makes sections of one kind; none means that there is nothing to show.
type maker func(*subject) ([]section, error)

// sections are in the order of the product's way along the line.
var sections = []maker{
	one(outputSection), one(statesSection), lossTreeSections, one(waitsSection), one(originsSection), levelSections, one(storesSection), ordersSection, one(timelineSection), one(agesSection),
	one(stopsSection), one(refillsSection), one(lossesSection), one(materialsSection), one(checksSection), one(waitsForPeopleSection), one(peopleSection), one(ratesSection),
	one(figuresSection), one(stepsSection), one(stationFiguresSection), one(timesSection), one(measuresSection),
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
	v := &view{First: s.spokenFirst(firstOf(s)), Looks: looks, Header: headerOf(in), End: endOf(s, in.Version)}
	for _, make := range sections {
		made, err := make(s)
		if err != nil {
			return nil, err
		}
		for _, one := range made {
			v.Sections = append(v.Sections, s.spokenSection(one))
		}
	}
	return v, nil
}
