package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"tuckline/internal/chartkit"
	"tuckline/internal/study"
)

func runCommand(t terminal) *cobra.Command {
	var flags studyFlags
	command := &cobra.Command{
		Use:   "run FILE",
		Short: "Simulate a line: summary here, report and data in a new folder",
		Long: `Simulates the line of a scenario file many times. The summary says what it
delivers, with the interval, and why it does not deliver more. A new folder gets
  report.html       answer, causes and charts; opens offline
  results.json      every estimate with its interval
  replications.csv  one row a replication
  scenario.yaml     the scenario that was run, values of --set included`,
		Example: `  tuckline run scenarios/lowmere.yaml
  tuckline run scenarios/lowmere.yaml --set "transfer store.holds=1200 blisters" --out big-store
  tuckline run scenarios/lowmere.yaml --set "cartoner.stops.minor stop.lasts.mean=90 s"
  tuckline run scenarios/lowmere.yaml --replications 200 --show "cartoner starved"
  tuckline run scenarios/lowmere.yaml --show "late refills" --show "crew minutes"
  tuckline run scenarios/lowmere.yaml --format json`,
		Args:              oneFile,
		ValidArgsFunction: scenarioFiles,
		RunE: func(command *cobra.Command, args []string) error {
			return simulate(command.Context(), t, args[0], &flags)
		},
	}
	flags.add(command)
	return command
}

// simulate refuses what cannot end well before the first replication is run.
func simulate(ctx context.Context, t terminal, name string, flags *studyFlags) error {
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
	options := flags.options()
	shown := progressOn(t.err)
	if shown != nil {
		options.Progress = shown.show
	}
	outcome, err := study.Run(ctx, s, options)
	if shown != nil {
		shown.clear()
	}
	if err != nil {
		return err
	}
	return deliver(t, where, outcome, flags.format.text)
}

func (f *studyFlags) options() study.Options {
	o := study.Options{Workers: int(f.workers.value), Bounds: true, Trace: true, Show: f.show}
	if f.replications.part {
		o.From, o.To, o.Part = f.replications.from, f.replications.to, true
	}
	return o
}

// deliver writes the files, then the answer. What an interrupted run has
// finished is delivered in the same way, and said to be so.
func deliver(t terminal, where folder, o *study.Outcome, format string) error {
	path, err := where.write(filesOf(o))
	if err != nil {
		return err
	}
	if err := printAnswer(t, o, format, path); err != nil {
		return err
	}
	if o.Interrupted {
		fmt.Fprintf(t.err, "Interrupted: what was finished is kept, %d replications. Results in %s\n", len(o.Records), path)
		return errInterrupted
	}
	return nil
}
