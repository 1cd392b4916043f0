package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

const whatToType = `Tuckline says what a blister-to-carton line will deliver and what stands in its way.

Type one of these:
  tuckline check FILE    read a scenario file and show the figures that follow from it
  tuckline run FILE      simulate it: summary here, report and data in a new folder
  tuckline --help        all commands, with examples

A scenario file describes the line. To start, copy scenarios/first-line.yaml.
`

func rootCommand(t terminal) *cobra.Command {
	root := &cobra.Command{
		Use:   "tuckline",
		Short: "What a blister-to-carton line will deliver, and what stands in its way",
		Long: `Tuckline simulates a line that turns foil and tablets into blisters and blisters
into cartons. A scenario file describes the line; the answer comes with its
interval, with where the line is blocked or starved, and why.`,
		Example: `  tuckline check scenarios/lowmere.yaml
  tuckline run scenarios/lowmere.yaml
  tuckline run scenarios/lowmere.yaml --set "transfer store.holds=1200 blisters"`,
		Args:          noArguments,
		SilenceErrors: true,
		SilenceUsage:  true,

		SuggestionsMinimumDistance: lettersWrong,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprint(t.out, whatToType)
			return err
		},
	}
	root.SetOut(t.out)
	root.SetErr(t.err)
	root.SetFlagErrorFunc(flagFault)
	root.SetUsageTemplate(strings.ReplaceAll(root.UsageTemplate(), ".FlagUsages ", ".FlagUsagesWrapped 80 "))
	root.AddCommand(checkCommand(t), runCommand(t), acceptanceCommand(t), deliveryCommand(t), schemaCommand(t), proofCommand(t), versionCommand(t))
	return root
}

// lettersWrong is how many letters a command may be off to be taken for a known one.
const lettersWrong = 2
