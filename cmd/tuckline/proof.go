package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"

	"tuckline/internal/proof"
	"tuckline/internal/report"
)

func proofCommand(t terminal) *cobra.Command {
	var options proof.Options
	var out, date string
	format := choice{of: []string{"table", "json"}, text: "table"}
	command := &cobra.Command{
		Use:   "proof",
		Short: "Hold the program against exact results, on this computer",
		Long: `Simulates lines whose long-run figures are exactly known and says for each whether
the exact value lies in the interval. Without --full it takes half a minute and a
part of the cases. A new folder gets
  proof.html   answer, rules, every case with model, exact value, source, interval
  proof.json   the same for other programs
  proof.csv    a row a figure
The exit code is 1 if a figure misses twice.`,
		Example: `  tuckline proof
  tuckline proof --full --out proof-of-this-version
  tuckline proof --case TWO-2 --case EXPU-7
  tuckline proof --format json`,
		Args: noMore,
		RunE: func(command *cobra.Command, _ []string) error {
			where, err := folderFor(out, "proof")
			if err != nil {
				return err
			}
			return prove(command.Context(), t, where, options, format.text, date)
		},
	}
	flags := command.Flags()
	flags.SortFlags = false
	flags.BoolVar(&options.Full, "full", false, "take all cases, to 0.3 %: a quarter of an hour on two cores")
	flags.StringArrayVar(&options.Only, "case", nil, "take only the case `NAME`; may be given again")
	flags.Var(&format, "format", "print the answer as `FORM`: table or json")
	// The only error is a flag that does not exist.
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(format.of, cobra.ShellCompDirectiveNoFileComp))
	flags.StringVar(&date, "date", "", "print this `TEXT` on the page, as the date of the run; without it there is none")
	flags.StringVar(&out, "out", "", "put the files into the new folder `DIR`; without it proof-results")
	return command
}

func prove(ctx context.Context, t terminal, where folder, options proof.Options, format, date string) error {
	shown := progressOn(t.err)
	if shown != nil {
		options.Progress = shown.show
	}
	outcome, err := proof.Prove(ctx, options)
	if shown != nil {
		shown.clear()
	}
	if errors.Is(err, context.Canceled) {
		fmt.Fprintln(t.err, "Interrupted: a part of a proof shows nothing, so nothing was written")
		return errInterrupted
	}
	if errors.Is(err, proof.ErrCaseName) {
		return inputFault{err}
	}
	if err != nil {
		return err
	}
	path, err := where.write(proofFiles(outcome, date))
	if err != nil {
		return err
	}
	if err := printProof(t, outcome, format, path); err != nil {
		return err
	}
	if outcome.Failed() {
		return errors.New("the program does not agree with exact results: see the lines marked FAULT")
	}
	return nil
}

func proofFiles(o *proof.Outcome, date string) []file {
	page := proof.Page{
		Outcome: o, Version: "tuckline " + programVersion() + builtFrom(), Unknown: programVersion() == noCommit, Date: date, Style: report.StyleSheet(),
		Platform: fmt.Sprintf("%s/%s, %s", runtime.GOOS, runtime.GOARCH, runtime.Version()),
	}
	return []file{
		{"proof.html", func(w io.Writer) error { return proof.HTML(w, page) }},
		{"proof.json", func(w io.Writer) error { return proof.JSON(w, o) }},
		{"proof.csv", func(w io.Writer) error { return proof.CSV(w, o) }},
	}
}

// builtFrom is the commit behind a version that has another name, and when it was made; empty where the
// build does not know.
func builtFrom() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return ""
	}
	commit, made := "", ""
	for _, one := range info.Settings {
		switch one.Key {
		case "vcs.revision":
			commit = one.Value[:min(shownDigits, len(one.Value))]
		case "vcs.time":
			made = one.Value
		}
	}
	switch {
	case made == "":
		return ""
	case strings.Contains(programVersion(), commit):
		return ", commit made " + made
	}
	return ", commit " + commit + " made " + made
}

func printProof(t terminal, o *proof.Outcome, format, path string) error {
	if format == "json" {
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return proof.JSON(t.out, o)
	}
	if err := proof.Table(t.out, o); err != nil {
		return err
	}
	_, err := fmt.Fprintf(t.out, "\nResults in %s: open proof.html in a browser\n", path)
	return err
}
