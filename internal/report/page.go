package report

import (
	"io"

	"tuckline/internal/chartkit"
	"tuckline/internal/study"
)

// Page is what a report is made from: finished results. Nothing is computed
// here but what drawing needs.
type Page struct {
	Outcome *study.Outcome
	// Version is that of the program, as "tuckline version" prints it.
	Version string
}

// HTML writes the report as one file that needs nothing else. The error is
// chartkit.ErrNoEngine where the build has no chart engine: a report without
// charts is not written.
func HTML(w io.Writer, in Page) error {
	engine, err := chartkit.GzipJS()
	if err != nil {
		return err
	}
	return write(w, in, engine)
}

func write(w io.Writer, in Page, engine []byte) error {
	v, err := viewOf(in)
	if err != nil {
		return err
	}
	v.Engine = embedded(engine)
	return layout.Execute(w, v)
}
