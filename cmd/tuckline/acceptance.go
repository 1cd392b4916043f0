package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"tuckline/internal/chartkit"
	"tuckline/internal/quantity"
	"tuckline/internal/report"
	"tuckline/internal/study"
)

func acceptanceCommand(t terminal) *cobra.Command {
	var flags acceptanceFlags
	command := &cobra.Command{
		Use:   "acceptance FILE",
		Short: "Say how likely a line passes its agreed acceptance run",
		Long: `Simulates the agreed run of the agreement in a scenario file many times: for the
line as entered, and for lines that are truly better and worse. How often every
stop comes is multiplied by one factor, found so that the long-run efficiency is
the true one. It says how likely each of them passes, how long the run must be,
and what the asymptotic renewal formula says beside it. A new folder gets
  report.html    answer, curve and tables; opens offline
  results.json   every figure with its interval
  acceptance.csv one row a true efficiency
  scenario.yaml  the scenario that was run, values of --set included`,
		Example: `  tuckline acceptance scenarios/mossgill.yaml
  tuckline acceptance scenarios/mossgill.yaml --set "agreement.run=24 h"
  tuckline acceptance scenarios/mossgill.yaml --set "agreement.of=top speed"
  tuckline acceptance scenarios/mossgill.yaml --truly "84 %" --truly "88 %" --power "95 %"
  tuckline acceptance scenarios/mossgill.yaml --replications 2000 --format csv`,
		Args:              oneFile,
		ValidArgsFunction: scenarioFiles,
		RunE: func(command *cobra.Command, args []string) error {
			return accept(command.Context(), t, args[0], &flags)
		},
	}
	flags.add(command)
	return command
}

// acceptanceFlags are the flags of an acceptance study.
type acceptanceFlags struct {
	out          string
	set          []string
	replications number
	seed         number
	workers      number
	format       choice
	truly        []string
	power        string
}

func (f *acceptanceFlags) add(command *cobra.Command) {
	flags := command.Flags()
	flags.SortFlags = false
	flags.StringArrayVar(&f.set, "set", nil, setUsage)
	f.replications.least = 2
	flags.Var(&f.replications, "replications", "simulate the agreed run `NUMBER` times for each true efficiency; without it 400 times, less often, 100 times at least, if it is longer than 8 h or the line has many cycles")
	flags.StringArrayVar(&f.truly, "truly", nil, "look at a line that truly runs at `EFFICIENCY`, as in \"88 %\"; may be given again; without it seven around the agreed one")
	flags.StringVar(&f.power, "power", "90 %", "look for the run length that is passed with this `PROBABILITY`")
	flags.Var(&f.seed, "seed", "draw other random numbers: any whole `NUMBER`")
	f.workers.least = 1
	flags.Var(&f.workers, "workers", "run `NUMBER` replications at a time; without it one a core")
	f.format = choice{of: []string{"table", "json", "csv"}, text: "table"}
	flags.Var(&f.format, "format", "print the answer as `FORM`: table, json or csv")
	// The only error is a flag that does not exist.
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(f.format.of, cobra.ShellCompDirectiveNoFileComp))
	flags.StringVar(&f.out, "out", "", "put report and data into the new folder `DIR`; without it NAME-results")
}

func (f *acceptanceFlags) sets() []string {
	all := studyFlags{set: f.set, seed: f.seed}
	return all.sets()
}

// options are those of the study, or all that is wrong with the flags.
func (f *acceptanceFlags) options() (study.AcceptanceOptions, error) {
	o := study.AcceptanceOptions{Runs: int(f.replications.value), Workers: int(f.workers.value)}
	var faults []error
	read := func(flag, text string) float64 {
		value, err := quantity.Share(text)
		if err == nil && (value <= 0 || value >= 1) {
			err = errors.New("write more than 0 % and less than 100 %")
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("--%s %s: %w", flag, text, err))
		}
		return value
	}
	o.Power = read("power", f.power)
	if o.Power > 0 && o.Power <= 0.5 {
		faults = append(faults, fmt.Errorf("--power %s: write more than 50 %%; a longer run helps only beyond that", strings.TrimSpace(f.power)))
	}
	for _, text := range f.truly {
		o.Truly = append(o.Truly, read("truly", text))
	}
	if len(faults) > 0 {
		return o, inputFault{errors.Join(faults...)}
	}
	return o, nil
}

// accept refuses what cannot end well before the first run.
func accept(ctx context.Context, t terminal, name string, flags *acceptanceFlags) error {
	options, err := flags.options()
	if err != nil {
		return err
	}
	s, err := readScenario(name, flags.sets())
	if err != nil {
		return err
	}
	where, err := folderFor(flags.out, name)
	if err != nil {
		return err
	}
	if _, err := chartkit.GzipJS(); err != nil {
		return fmt.Errorf("no report can be written: %w", err)
	}
	shown := progressOn(t.err)
	if shown != nil {
		options.Progress = shown.show
	}
	outcome, err := study.Accept(ctx, s, options)
	if shown != nil {
		shown.clear()
	}
	if errors.Is(err, context.Canceled) {
		fmt.Fprintln(t.err, "Interrupted: a part of the curve answers nothing, so nothing was written")
		return errInterrupted
	}
	if err != nil {
		return err
	}
	path, err := where.write(acceptanceFiles(outcome))
	if err != nil {
		return err
	}
	return printAcceptance(t, outcome, flags.format.text, path)
}

func acceptancePage(o *study.AcceptanceOutcome) report.AcceptancePage {
	return report.AcceptancePage{Outcome: o, Version: "tuckline " + programVersion()}
}

// acceptanceFiles are the files of an acceptance study.
func acceptanceFiles(o *study.AcceptanceOutcome) []file {
	return []file{
		{"report.html", func(w io.Writer) error { return report.AcceptanceHTML(w, acceptancePage(o)) }},
		{"results.json", func(w io.Writer) error { return report.AcceptanceJSON(w, o) }},
		{"acceptance.csv", func(w io.Writer) error { return report.AcceptanceCSV(w, o) }},
		{"scenario.yaml", func(w io.Writer) error {
			_, err := w.Write(o.Scenario.Source)
			return err
		}},
	}
}

func printAcceptance(t terminal, o *study.AcceptanceOutcome, format, path string) error {
	switch format {
	case "json":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return report.AcceptanceJSON(t.out, o)
	case "csv":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return report.AcceptanceCSV(t.out, o)
	}
	if err := report.AcceptanceTerminal(t.out, acceptancePage(o)); err != nil {
		return err
	}
	_, err := fmt.Fprintf(t.out, "\nResults in %s: open report.html in a browser\n", path)
	return err
}
