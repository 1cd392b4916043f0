package main

import (
	"context"
	"fmt"
	"io"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tuckline/internal/report"
	"tuckline/internal/scenario"
	"tuckline/internal/study"
)

func runCommand(t terminal) *cobra.Command {
	var flags runFlags
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

// runFlags are the flags of a run.
type runFlags struct {
	commonFlags
	replications span
	show         []string
}

func (f *runFlags) add(command *cobra.Command) {
	f.commonFlags.add(command, func(flags *pflag.FlagSet) {
		flags.Var(&f.replications, "replications", "run `N` replications, or those from A to B: A-B")
		flags.StringArrayVar(&f.show, "show", nil, "add `MEASURE`, as in \"cartoner starved\"; may be given again; \"tuckline schema --measures\" lists them")
	})
}

// sets are those of all studies, and that of --replications, unless it is a part.
func (f *runFlags) sets() []string {
	all := f.commonFlags.sets()
	if f.replications.to > 0 && !f.replications.part {
		all = append(all, fmt.Sprintf("run.replications=%d", f.replications.to))
	}
	return all
}

func (f *runFlags) options() study.Options {
	o := study.Options{Workers: int(f.workers.value), Bounds: true, Trace: true, Show: f.show}
	if f.replications.part {
		o.From, o.To, o.Part = f.replications.from, f.replications.to, true
	}
	return o
}

// simulate runs the replications. What an interrupted run has finished is delivered in the same way, and said to be so.
func simulate(ctx context.Context, t terminal, name string, flags *runFlags) error {
	options := flags.options()
	o, path, err := conduct(t, name, &flags.commonFlags, flags.sets(),
		func(s *scenario.Scenario, progress func(done, total int)) (*study.Outcome, error) {
			options.Progress = progress
			return study.Run(ctx, s, options)
		},
		func(o *study.Outcome) *finished {
			page := report.Page{Outcome: o, Version: "tuckline " + programVersion()}
			return &finished{
				table:   func(w io.Writer) error { return report.Terminal(w, page) },
				page:    func(w io.Writer) error { return report.HTML(w, page) },
				json:    func(w io.Writer) error { return report.JSON(w, o.Results) },
				csv:     func(w io.Writer) error { return report.ReplicationsCSV(w, o) },
				csvName: "replications.csv", source: o.Scenario.Source,
			}
		})
	if err == nil && o.Interrupted {
		fmt.Fprintf(t.err, "Interrupted: what was finished is kept, %d replications. Results in %s\n", len(o.Records), path)
		return errInterrupted
	}
	return err
}
