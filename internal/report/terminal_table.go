package report

import (
	"strings"
	"unicode/utf8"
)

// stations writes the share of time in each state; where the states do not
// fit side by side, the table goes on below.
func (p *paper) stations(s *subject) {
	p.gap()
	p.paragraph(strings.TrimSpace(say("stations.title", nil) + " " + s.offShiftWords()))
	rows := s.stationRows()
	names, long := make([]string, len(rows)), 0
	for i, row := range rows {
		names[i] = fit(spaced(row.name), p.width/3)
		long = max(long, utf8.RuneCountInString(names[i]))
	}
	var columns [][]string
	for _, l := range scheduledLooks(looksIn(s.Results.Stations)) {
		columns = append(columns, stateColumn(s, l, rows))
	}
	for len(columns) > 0 {
		n := p.fitting(columns, long)
		p.grid(names, columns[:n], long)
		columns = columns[n:]
	}
}

// stationRow is a station in the table, or the name of the line of those below it.
type stationRow struct {
	name    string
	station int
	heading bool
}

func (s *subject) stationRows() []stationRow {
	var rows []stationRow
	last := ""
	for i, name := range s.stationNames() {
		line, own := s.ofLine(name)
		if line != "" {
			if line != last {
				rows = append(rows, stationRow{name: line, heading: true})
			}
			own = "  " + own
		}
		last = line
		rows = append(rows, stationRow{name: own, station: i})
	}
	return rows
}

// stateColumn has the word of the state and a share for every station.
func stateColumn(s *subject, l stateLook, rows []stationRow) []string {
	column, shares, place := []string{l.Word()}, s.sharesOf(l), s.statesPlace()
	for _, row := range rows {
		value := ""
		if !row.heading {
			value = atPlace(shares[row.station], 100, place).String()
		}
		column = append(column, value)
	}
	return column
}

func widest(column []string) int {
	width := 0
	for _, text := range column {
		width = max(width, utf8.RuneCountInString(text))
	}
	return width
}

// fitting is how many columns stand beside the names, at least one.
func (p *paper) fitting(columns [][]string, names int) int {
	room := p.width - 2 - names
	for n, column := range columns {
		if room -= columnWidth(column) + 2; room < 0 {
			return max(n, 1)
		}
	}
	return len(columns)
}

// columnWidth is that of the values, or of the longest word of the heading.
func columnWidth(column []string) int {
	return max(widest(column[1:]), widest(strings.Fields(column[0])))
}

// grid writes names and right-aligned columns under headings of several lines.
func (p *paper) grid(names []string, columns [][]string, long int) {
	var headings [][]string
	deep := 0
	for _, column := range columns {
		h := folded(column[0], columnWidth(column))
		headings, deep = append(headings, h), max(deep, len(h))
	}
	for row := range deep {
		p.cells("", long, columns, func(c int) string {
			if at := row - (deep - len(headings[c])); at >= 0 {
				return headings[c][at]
			}
			return ""
		})
	}
	for row, name := range names {
		p.cells(name, long, columns, func(c int) string { return columns[c][row+1] })
	}
}

func (p *paper) cells(name string, long int, columns [][]string, text func(int) string) {
	line := "  " + padRight(name, long)
	for c, column := range columns {
		line += "  " + padLeft(text(c), columnWidth(column))
	}
	p.line(line)
}

// plainWords parts a text at plain spaces: others hold a number and its unit together.
func plainWords(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r == ' ' })
}

// folded breaks a heading into lines no wider than its column.
func folded(heading string, width int) []string {
	var lines []string
	for _, word := range plainWords(heading) {
		last := len(lines) - 1
		if last >= 0 && utf8.RuneCountInString(lines[last])+1+utf8.RuneCountInString(word) <= width {
			lines[last] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}
