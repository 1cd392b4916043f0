package report

import (
	"encoding/base64"
	"html/template"
	"io"

	"tuckline/internal/chartkit"
)

// studyView is what the page of a study other than a run shows.
type studyView struct {
	First    studyFirst
	Sections []section
	End      ending
	Looks    []stateLook
	Engine   template.HTML
	Header   header
}

// studyFirst is its first screen.
type studyFirst struct {
	Title, Question  string
	Answer, Warnings []string
	Interval         string
}

// writeStudy writes its report as one file that needs nothing else.
func writeStudy(w io.Writer, viewOf func() (*studyView, error)) error {
	engine, err := chartkit.GzipJS()
	if err != nil {
		return err
	}
	v, err := viewOf()
	if err != nil {
		return err
	}
	v.Engine = embedded(engine)
	return layout.ExecuteTemplate(w, "study.gohtml", v)
}

// embedded is the chart engine in a page: as HTML, because the template package would escape the + of base64 in a script that is
// no script.
func embedded(engine []byte) template.HTML {
	return template.HTML(base64.StdEncoding.EncodeToString(engine))
}

// opening writes the first screen to a terminal, up to its table.
func (f *studyFirst) opening(p *paper) {
	p.paragraph(f.Title)
	p.paragraph(f.Question)
	p.gap()
	for _, sentence := range f.Answer {
		p.paragraph(sentence)
	}
	p.gap()
}

// closing writes what follows the table.
func (f *studyFirst) closing(p *paper, w io.Writer) error {
	p.warnings(f.Warnings)
	p.gap()
	p.paragraph(f.Interval)
	_, err := io.WriteString(w, p.text.String())
	return err
}
