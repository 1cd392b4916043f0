package scenario

import (
	"slices"
	"strings"
)

// joinLines makes one list of the entries of all lines, and names of the model of the bare ones at the top of the
// file, which mean all lines that have them.
func (b *resolver) joinLines() {
	w := &b.words.Lines
	if !w.given() {
		return
	}
	if b.words.Line.given() {
		b.complain(b.words.Line.at, "a scenario has line: or lines:, not both (line %d)", w.line())
	}
	b.words.Line = lineWords{at: w.at}
	for _, line := range w.list {
		b.words.Line.entries = append(b.words.Line.entries, line.entries...)
	}
	b.everyLine()
}

// everyLine lets bare names at the top mean all lines that have them.
func (b *resolver) everyLine() {
	answer := &b.words.Answer.CountedAfter
	list := answer.list
	answer.list = nil
	for _, one := range list {
		for _, name := range b.inLines(one.value) {
			answer.list = append(answer.list, text{one.at, name})
		}
	}
	start := &b.words.Run.AtStart.Levels
	levels := start.list
	start.list = nil
	for _, one := range levels {
		for _, name := range b.inLines(one.name) {
			one.name = name
			if i := slices.IndexFunc(start.list, func(other entry[level]) bool { return other.name == name }); i < 0 {
				start.list = append(start.list, one)
			} else if lineOf(one.place.node.Text, b.lines) != "" {
				start.list[i] = one // "line 1.store" says more than "store"
			}
		}
	}
}

// inLines are the names of the model that a name at the top of the file means; one that no line has stays. Of a line
// that could not be read nothing is known.
func (b *resolver) inLines(name string) (all []string) {
	for _, line := range b.words.Lines.list {
		if len(line.entries) == 0 && strings.HasPrefix(name, line.name+".") {
			return nil
		}
	}
	for _, e := range b.words.Line.entries {
		if bare := strings.TrimPrefix(e.name.value, e.line+"."); bare == name {
			all = append(all, e.name.value)
		}
	}
	if len(all) == 0 || lineOf(name, b.lines) != "" {
		return []string{name}
	}
	return all
}

// productionLines says which stations and buffers each line has.
func (b *resolver) productionLines() {
	names := []string{""}
	if b.words.Lines.given() {
		names = nil
		for _, line := range b.words.Lines.list {
			names = append(names, line.name)
		}
	}
	for _, name := range names {
		line := ProductionLine{Name: name}
		for i := range b.s.Line.Stations {
			if lineOf(b.s.Line.Stations[i].Name, b.lines) == name {
				line.Stations = append(line.Stations, i)
			}
		}
		for i := range b.s.Line.Buffers {
			if lineOf(b.s.Line.Buffers[i].Name, b.lines) == name {
				line.Buffers = append(line.Buffers, i)
			}
		}
		b.s.Lines = append(b.s.Lines, line)
	}
}

// lastStations are the last of each line.
func (b *resolver) lastStations() (last []int) {
	for _, line := range b.s.Lines {
		if n := len(line.Stations); n > 0 {
			last = append(last, line.Stations[n-1])
		}
	}
	return last
}

// above is the entry over another in its line, or nil.
func (b *resolver) above(i int) *entryWords {
	all := b.words.Line.entries
	if i == 0 || all[i-1].line != all[i].line {
		return nil
	}
	return all[i-1]
}

// dropCopies takes out complaints about values of a copied line that are said of the other one already.
func (r *reader) dropCopies() {
	said := map[string]bool{}
	r.complaints = slices.DeleteFunc(r.complaints, func(c Complaint) bool {
		key := c.String()
		for _, line := range r.lines {
			key = strings.ReplaceAll(key, line+".", "")
		}
		twice := said[key] && len(r.lines) > 1
		said[key] = true
		return twice
	})
}

// bareNames are the names of a line as they are written inside of it; at the top those of all lines.
func (r *reader) bareNames(wanted string, names []string) (string, []string) {
	line := lineOf(wanted, r.lines)
	var bare []string
	for _, name := range names {
		of := lineOf(name, r.lines)
		if of != "" && line != "" && of != line {
			continue
		}
		name = strings.TrimPrefix(name, of+".")
		if !slices.Contains(bare, name) {
			bare = append(bare, name)
		}
	}
	if line != "" {
		wanted = strings.TrimPrefix(wanted, line+".")
	}
	return wanted, bare
}
