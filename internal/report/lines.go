package report

import (
	"slices"
	"strings"
)

// A station of one of several lines has the name of its line before its own: "line 1.cartoner". Sentences say
// "line 1 cartoner", and tables the line once, before its stations.

// ofLine parts a name into that of its line and its own; the first is empty where it belongs to no named line.
func (s *subject) ofLine(name string) (line, own string) {
	for _, one := range s.Scenario.Lines {
		if rest, is := strings.CutPrefix(name, one.Name+"."); is && one.Name != "" {
			return one.Name, rest
		}
	}
	return "", name
}

// speaker puts the names of stations and buffers as people say them into a finished text.
func (s *subject) speaker() *strings.Replacer {
	var pairs []string
	add := func(line, name string) {
		pairs = append(pairs, name, line+strings.Replace(strings.TrimPrefix(name, line), ".", " ", 1))
	}
	for _, line := range s.Scenario.Lines {
		if line.Name == "" {
			continue
		}
		for _, i := range line.Stations {
			add(line.Name, s.Scenario.Line.Stations[i].Name)
		}
		for _, i := range line.Buffers {
			add(line.Name, s.Scenario.Line.Buffers[i].Name)
		}
	}
	return strings.NewReplacer(pairs...)
}

// stationList names stations within a sentence: those of the same name in several lines together.
func (s *subject) stationList(names []string) string {
	var own []string
	lines := map[string][]string{}
	for _, name := range names {
		line, bare := s.ofLine(name)
		if !slices.Contains(own, bare) {
			own = append(own, bare)
		}
		lines[bare] = append(lines[bare], line)
	}
	var all []string
	for _, bare := range own {
		of := lines[bare]
		switch {
		case slices.Contains(of, ""):
			all = append(all, bare)
		case len(of) == 1:
			all = append(all, of[0]+" "+bare)
		default:
			all = append(all, say("of.lines", facts{"Station": bare, "Lines": listed(of), "Each": len(of) == len(s.Scenario.Lines)}))
		}
	}
	return listed(all)
}

// oneEach says that the stations are one of each line, all of the same name: a sentence then speaks of one.
func (s *subject) oneEach(names []string) bool {
	if len(names) < 2 || len(names) != len(s.Scenario.Lines) {
		return false
	}
	_, first := s.ofLine(names[0])
	return !slices.ContainsFunc(names, func(name string) bool {
		line, own := s.ofLine(name)
		return line == "" || own != first
	})
}

// byLine puts the name of a line once, before its rows, and leaves their own names in them. Tables in which the lines
// alternate, as those by size, keep the names whole.
func (s *subject) byLine(t table) table {
	for column := range t.Words {
		lines, groups := make([]string, len(t.Rows)), 0
		for i, row := range t.Rows {
			if len(row) > column {
				lines[i], _ = s.ofLine(row[column].Text)
			}
			if lines[i] != "" && (i == 0 || lines[i] != lines[i-1]) {
				groups++
			}
		}
		if groups > 0 && 2*groups <= len(t.Rows) {
			t.Rows = s.grouped(t.Rows, lines, column)
			return t
		}
	}
	return t
}

// within indents the first cell of a row that belongs to the row of one cell above it.
const within = "\u2003"

// grouped has a row of one cell, the name of a line, before the rows of each.
func (s *subject) grouped(rows [][]cell, lines []string, column int) [][]cell {
	var all [][]cell
	for i, row := range rows {
		if lines[i] == "" {
			all = append(all, row)
			continue
		}
		if i == 0 || lines[i] != lines[i-1] {
			all = append(all, []cell{text(lines[i])})
		}
		row = slices.Clone(row)
		_, row[column].Text = s.ofLine(row[column].Text)
		row[0].Text = within + row[0].Text
		all = append(all, row)
	}
	return all
}
