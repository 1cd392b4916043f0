package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"tuckline/internal/chartkit"
	"tuckline/internal/scenario"
)

// finished is a study in all the forms in which it is written or printed.
type finished struct {
	table, page, json, csv func(io.Writer) error
	// csvName is the file that csv is written to; source the scenario that was run.
	csvName string
	source  []byte
}

// conduct reads a scenario, runs a study of it, shows on a terminal how far that is, writes its files and prints the answer; path
// says where the files are. It refuses what cannot end well before the first run.
func conduct[O any](
	t terminal, name string, f *commonFlags, sets []string,
	run func(s *scenario.Scenario, progress func(done, total int)) (O, error), formsOf func(O) *finished,
) (o O, path string, err error) {
	s, err := readScenario(name, sets)
	if err != nil {
		return o, "", err
	}
	where, err := folderFor(f.out, name)
	if err != nil {
		return o, "", err
	}
	if _, err := chartkit.GzipJS(); err != nil {
		return o, "", fmt.Errorf("no report can be written: %w", err)
	}
	if shown := progressOn(t.err); shown != nil {
		o, err = run(s, shown.show)
		shown.clear()
	} else {
		o, err = run(s, nil)
	}
	if err != nil {
		return o, "", err
	}
	path, err = formsOf(o).deliver(t, where, f.format.text)
	return o, path, err
}

// allOrNothing says of a study that was interrupted, of which a part answers nothing, that nothing was written.
func allOrNothing(t terminal, err error) error {
	if errors.Is(err, context.Canceled) {
		fmt.Fprintln(t.err, "Interrupted: a part of these runs answers nothing, so nothing was written")
		return errInterrupted
	}
	return err
}

// deliver writes the files, then prints the answer in the form that was asked for; it says where the files are. Where other
// programs read the answer, the path goes beside it.
func (a *finished) deliver(t terminal, where folder, format string) (path string, err error) {
	if path, err = where.write(a.files()); err != nil {
		return path, err
	}
	switch format {
	case "json":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return path, a.json(t.out)
	case "csv":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return path, a.csv(t.out)
	}
	if err := a.table(t.out); err != nil {
		return path, err
	}
	_, err = fmt.Fprintf(t.out, "\nResults in %s: open report.html in a browser\n", path)
	return path, err
}

func (a *finished) files() []file {
	return []file{
		{"report.html", a.page},
		{"results.json", a.json},
		{a.csvName, a.csv},
		{"scenario.yaml", func(w io.Writer) error {
			_, err := w.Write(a.source)
			return err
		}},
	}
}
