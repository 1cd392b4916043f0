package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tuckline/internal/report"
	"tuckline/internal/scenario"
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
	commonFlags
	replications number
	by           string
	chance       string
}

func (f *deliveryFlags) add(command *cobra.Command) {
	f.commonFlags.add(command, func(flags *pflag.FlagSet) {
		flags.StringVar(&f.by, "by", "", "all orders are due at `CLOCK`, as in \"Fri 14:00\" or \"week 2 Mon 06:00\"; without it at their own dates")
		flags.StringVar(&f.chance, "chance", "95 %", "look for the latest start with this `PROBABILITY` of being in time")
		f.replications.least = 2
		flags.Var(&f.replications, "replications", "simulate the orders `NUMBER` times for each start; without it 200 times, or as often as the file says if that is more")
	})
}

// options are those of the study, or what is wrong with the flags.
func (f *deliveryFlags) options() (study.DeliveryOptions, error) {
	o := study.DeliveryOptions{By: f.by, Replications: int(f.replications.value), Workers: int(f.workers.value)}
	var err error
	if o.Chance, err = probability("chance", f.chance); err != nil {
		return o, inputFault{err}
	}
	return o, nil
}

func deliverOrders(ctx context.Context, t terminal, name string, flags *deliveryFlags) error {
	options, err := flags.options()
	if err != nil {
		return err
	}
	_, _, err = conduct(t, name, &flags.commonFlags, flags.sets(),
		func(s *scenario.Scenario, progress func(done, total int)) (*study.DeliveryOutcome, error) {
			options.Progress = progress
			return study.Deliver(ctx, s, options)
		},
		func(o *study.DeliveryOutcome) *finished {
			page := report.DeliveryPage{Outcome: o, Version: "tuckline " + programVersion()}
			return &finished{
				table:   func(w io.Writer) error { return report.DeliveryTerminal(w, page) },
				page:    func(w io.Writer) error { return report.DeliveryHTML(w, page) },
				json:    func(w io.Writer) error { return report.JSON(w, o.Results) },
				csv:     func(w io.Writer) error { return report.DeliveryCSV(w, o) },
				csvName: "delivery.csv", source: o.Scenario.Source,
			}
		})
	return allOrNothing(t, err)
}
