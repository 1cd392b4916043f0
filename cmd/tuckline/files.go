package main

import (
	"fmt"
	"io"

	"tuckline/internal/report"
	"tuckline/internal/study"
)

// filesOf are the files of one run.
func filesOf(o *study.Outcome) []file {
	return []file{
		{"report.html", func(w io.Writer) error { return report.HTML(w, pageOf(o)) }},
		{"results.json", func(w io.Writer) error { return report.JSON(w, o) }},
		{"replications.csv", func(w io.Writer) error { return report.ReplicationsCSV(w, o) }},
		{"scenario.yaml", func(w io.Writer) error {
			_, err := w.Write(o.Scenario.Source)
			return err
		}},
	}
}

func pageOf(o *study.Outcome) report.Page {
	return report.Page{Outcome: o, Version: "tuckline " + programVersion()}
}

// printAnswer writes the answer in the form that was asked for. Where other programs read it,
// the path of the files goes beside it.
func printAnswer(t terminal, o *study.Outcome, format, path string) error {
	switch format {
	case "json":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return report.JSON(t.out, o)
	case "csv":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return report.ReplicationsCSV(t.out, o)
	}
	if err := report.Terminal(t.out, pageOf(o)); err != nil {
		return err
	}
	_, err := fmt.Fprintf(t.out, "\nResults in %s: open report.html in a browser\n", path)
	return err
}
