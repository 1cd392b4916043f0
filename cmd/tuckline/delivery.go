package main

import (
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"tuckline/internal/chartkit"
	"tuckline/internal/quantity"
	"tuckline/internal/report"
	"tuckline/internal/study"
)

func deliveryCommand(t terminal) *cobra.Command {
	var flags deliveryFlags
	command := &cobra.Command{
		Use:   "delivery FILE",
		Short: "Say when the orders are finished, how surely in time, and when to start",
		Long: `Simulates the orders of a scenario file many times to their end. It says how
likely all of them, or those with a date, are finished in time, when half, 90 and
95 % of the runs are finished, and which start is the latest that still gives the
wanted chance. A new folder gets
  report.html   answer, curve and tables; opens offline
  results.json  every figure with its interval
  delivery.csv  one row a run and order: when it began and was finished
  scenario.yaml the scenario that was run, values of --set included`,
		Example: `  tuckline delivery scenarios/tarn-hollow.yaml --by "Fri 14:00"
  tuckline delivery scenarios/tarn-hollow.yaml --by "week 2 Wed 22:00" --chance "90 %"
  tuckline delivery scenarios/tarn-hollow.yaml --by "Fri 14:00" --set "run.starts=Wed 06:00"
  tuckline delivery scenarios/tarn-hollow.yaml --by "Fri 14:00" --replications 1000 --format json`,
		Args:              oneFile,
		ValidArgsFunction: scenarioFiles,
		RunE: func(command *cobra.Command, args []string) error {
			return deliverOrders(command.Context(), t, args[0], &flags)
		},
	}
	flags.add(command)
	return command
}

// deliveryFlags are the flags of a delivery study.
type deliveryFlags struct {
	out          string
	set          []string
	replications number
	seed         number
	workers      number
	format       choice
	by           string
	chance       string
}

func (f *deliveryFlags) add(command *cobra.Command) {
	flags := command.Flags()
	flags.SortFlags = false
	flags.StringArrayVar(&f.set, "set", nil, setUsage)
	flags.StringVar(&f.by, "by", "", "all orders are due at `CLOCK`, as in \"Fri 14:00\" or \"week 2 Mon 06:00\"; without it at their own dates")
	flags.StringVar(&f.chance, "chance", "95 %", "look for the latest start with this `PROBABILITY` of being in time")
	f.replications.least = 2
	flags.Var(&f.replications, "replications", "simulate the orders `NUMBER` times for each start; without it 200 times, or as often as the file says if that is more")
	flags.Var(&f.seed, "seed", "draw other random numbers: any whole `NUMBER`")
	f.workers.least = 1
	flags.Var(&f.workers, "workers", "run `NUMBER` replications at a time; without it one a core")
	f.format = choice{of: []string{"table", "json", "csv"}, text: "table"}
	flags.Var(&f.format, "format", "print the answer as `FORM`: table, json or csv")
	// The only error is a flag that does not exist.
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(f.format.of, cobra.ShellCompDirectiveNoFileComp))
	flags.StringVar(&f.out, "out", "", "put report and data into the new folder `DIR`; without it NAME-results")
}

// options are those of the study, or what is wrong with the flags.
func (f *deliveryFlags) options() (study.DeliveryOptions, error) {
	o := study.DeliveryOptions{By: f.by, Replications: int(f.replications.value), Workers: int(f.workers.value)}
	var err error
	if o.Chance, err = quantity.Share(f.chance); err == nil && (o.Chance <= 0 || o.Chance >= 1) {
		err = errors.New("write more than 0 % and less than 100 %")
	}
	if err != nil {
		return o, inputFault{fmt.Errorf("--chance %s: %w", f.chance, err)}
	}
	return o, nil
}

// deliverOrders refuses what cannot end well before the first run.
func deliverOrders(ctx context.Context, t terminal, name string, flags *deliveryFlags) error {
	options, err := flags.options()
	if err != nil {
		return err
	}
	s, err := readScenario(name, (&studyFlags{set: flags.set, seed: flags.seed}).sets())
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
	outcome, err := study.Deliver(ctx, s, options)
	if shown != nil {
		shown.clear()
	}
	if errors.Is(err, context.Canceled) {
		fmt.Fprintln(t.err, "Interrupted: a part of the runs answers nothing, so nothing was written")
		return errInterrupted
	}
	if err != nil {
		return err
	}
	path, err := where.write(deliveryFiles(outcome))
	if err != nil {
		return err
	}
	return printDelivery(t, outcome, flags.format.text, path)
}

func deliveryPage(o *study.DeliveryOutcome) report.DeliveryPage {
	return report.DeliveryPage{Outcome: o, Version: "tuckline " + programVersion()}
}

// deliveryFiles are the files of a delivery study.
func deliveryFiles(o *study.DeliveryOutcome) []file {
	return []file{
		{"report.html", func(w io.Writer) error { return report.DeliveryHTML(w, deliveryPage(o)) }},
		{"results.json", func(w io.Writer) error { return report.DeliveryJSON(w, o) }},
		{"delivery.csv", func(w io.Writer) error { return report.DeliveryCSV(w, o) }},
		{"scenario.yaml", func(w io.Writer) error {
			_, err := w.Write(o.Scenario.Source)
			return err
		}},
	}
}

func printDelivery(t terminal, o *study.DeliveryOutcome, format, path string) error {
	switch format {
	case "json":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return report.DeliveryJSON(t.out, o)
	case "csv":
		fmt.Fprintf(t.err, "Results in %s\n", path)
		return report.DeliveryCSV(t.out, o)
	}
	if err := report.DeliveryTerminal(t.out, deliveryPage(o)); err != nil {
		return err
	}
	_, err := fmt.Fprintf(t.out, "\nResults in %s: open report.html in a browser\n", path)
	return err
}
