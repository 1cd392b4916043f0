package main

import (
	"github.com/spf13/cobra"

	"tuckline/internal/keyfigure"
)

func checkCommand(t terminal) *cobra.Command {
	var set []string
	command := &cobra.Command{
		Use:   "check FILE",
		Short: "Read a scenario file and show the figures that follow from it",
		Long: `Reads a scenario file. Everything that is wrong in it is listed, each with its
place and with what would be right. A file without faults is answered with the
figures that follow from it before anything is simulated: speeds of the stations,
minutes of reels and magazines, usable buffer, the station that limits the line.`,
		Example: `  tuckline check scenarios/lowmere.yaml
  tuckline check scenarios/lowmere.yaml --set "blister machine.cycle=65/min"`,
		Args:              oneFile,
		ValidArgsFunction: scenarioFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			s, err := readScenario(args[0], set)
			if err != nil {
				return err
			}
			return keyfigure.Derive(s).Text(t.out)
		},
	}
	command.Flags().StringArrayVar(&set, "set", nil, setUsage)
	return command
}
