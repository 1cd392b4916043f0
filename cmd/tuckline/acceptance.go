package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tuckline/internal/report"
	"tuckline/internal/scenario"
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
	commonFlags
	replications number
	truly        []string
	power        string
}

func (f *acceptanceFlags) add(command *cobra.Command) {
	f.commonFlags.add(command, func(flags *pflag.FlagSet) {
		f.replications.least = 2
		flags.Var(&f.replications, "replications", "simulate the agreed run `NUMBER` times for each true efficiency; without it 400 times, less often, 100 times at least, if it is longer than 8 h or the line has many cycles")
		flags.StringArrayVar(&f.truly, "truly", nil, "look at a line that truly runs at `EFFICIENCY`, as in \"88 %\"; may be given again; without it seven around the agreed one")
		flags.StringVar(&f.power, "power", "90 %", "look for the run length that is passed with this `PROBABILITY`")
	})
}

// options are those of the study, or all that is wrong with the flags.
func (f *acceptanceFlags) options() (study.AcceptanceOptions, error) {
	o := study.AcceptanceOptions{Runs: int(f.replications.value), Workers: int(f.workers.value)}
	var faults []error
	read := func(flag, text string) float64 {
		value, err := probability(flag, text)
		if err != nil {
			faults = append(faults, err)
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

func accept(ctx context.Context, t terminal, name string, flags *acceptanceFlags) error {
	options, err := flags.options()
	if err != nil {
		return err
	}
	_, _, err = conduct(t, name, &flags.commonFlags, flags.sets(),
		func(s *scenario.Scenario, progress func(done, total int)) (*study.AcceptanceOutcome, error) {
			options.Progress = progress
			return study.Accept(ctx, s, options)
		},
		func(o *study.AcceptanceOutcome) *finished {
			page := report.AcceptancePage{Outcome: o, Version: "tuckline " + programVersion()}
			return &finished{
				table:   func(w io.Writer) error { return report.AcceptanceTerminal(w, page) },
				page:    func(w io.Writer) error { return report.AcceptanceHTML(w, page) },
				json:    func(w io.Writer) error { return report.JSON(w, o.Results) },
				csv:     func(w io.Writer) error { return report.AcceptanceCSV(w, o) },
				csvName: "acceptance.csv", source: o.Scenario.Source,
			}
		})
	return allOrNothing(t, err)
}
