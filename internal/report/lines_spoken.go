package report

import (
	"html/template"
)

// spokenAll are sentences with names as people say them.
func (s *subject) spokenAll(sentences []string) []string {
	names, all := s.speaker(), make([]string, len(sentences))
	for i, one := range sentences {
		all[i] = names.Replace(one)
	}
	return all
}

// spokenFirst is the first screen with names as people say them. Warnings keep theirs: they hold paths for --set.
func (s *subject) spokenFirst(f first) first {
	f.Answer, f.Span.Sentence = s.spokenAll(f.Answer), s.speaker().Replace(f.Span.Sentence)
	f.Causes = s.spokenCauses(f.Causes)
	return f
}

func (s *subject) spokenCauses(c causes) causes {
	names := s.speaker()
	c.Intro, c.Meaning = names.Replace(c.Intro), names.Replace(c.Meaning)
	for i := range c.Rows {
		c.Rows[i].Words = names.Replace(c.Rows[i].Words)
	}
	return c
}

// spokenSection is a section with names as people say them, its table by line.
func (s *subject) spokenSection(in section) section {
	names := s.speaker()
	in.Heading, in.Reading = names.Replace(in.Heading), names.Replace(in.Reading)
	for i := range in.Charts {
		in.Charts[i].Option = template.JS(names.Replace(string(in.Charts[i].Option)))
	}
	in.Table = s.spokenTable(in.Table)
	return in
}

func (s *subject) spokenTable(t table) table {
	t = s.byLine(t)
	names := s.speaker()
	t.Caption, t.Note = names.Replace(t.Caption), names.Replace(t.Note)
	for i := range t.Rows {
		for c := range t.Rows[i] {
			t.Rows[i][c].Text = names.Replace(t.Rows[i][c].Text)
		}
	}
	return t
}
