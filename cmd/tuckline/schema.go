package main

import (
	"fmt"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
)

func schemaCommand(t terminal) *cobra.Command {
	var measures bool
	command := &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of scenario files, or the list of measures",
		Long: `Prints the JSON Schema of scenario files. An editor that is told of it completes
words and marks mistakes while you type.`,
		Example: `  tuckline schema > scenario.schema.json
  tuckline schema --measures`,
		Args: noMore,
		RunE: func(*cobra.Command, []string) error {
			if measures {
				return printMeasures(t)
			}
			text, err := scenario.Schema()
			if err != nil {
				return err
			}
			_, err = fmt.Fprintln(t.out, string(text))
			return err
		},
	}
	command.Flags().BoolVar(&measures, "measures", false, "print the measures of --show instead")
	return command
}

func printMeasures(t terminal) error {
	table := tabwriter.NewWriter(t.out, 0, 0, 3, ' ', 0)
	fmt.Fprintln(table, "MEASURE\tPER\tMEANING")
	for _, word := range study.MeasureWords {
		fmt.Fprintf(table, "%s\t%s\t%s\n", word.Words, word.Per, word.Meaning)
	}
	return table.Flush()
}
