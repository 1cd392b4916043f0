package main

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tuckline/internal/quantity"
	"tuckline/internal/scenario"
)

// commonFlags are the flags that all studies have.
type commonFlags struct {
	out     string
	set     []string
	seed    number
	workers number
	format  choice
}

// add adds them to a command, and after --set its own.
func (f *commonFlags) add(command *cobra.Command, own func(*pflag.FlagSet)) {
	flags := command.Flags()
	flags.SortFlags = false
	flags.StringArrayVar(&f.set, "set", nil, setUsage)
	own(flags)
	flags.Var(&f.seed, "seed", "draw other random numbers: any whole `NUMBER`")
	f.workers.least = 1
	flags.Var(&f.workers, "workers", "run `NUMBER` replications at a time; without it one a core")
	f.format = choice{of: []string{"table", "json", "csv"}, text: "table"}
	flags.Var(&f.format, "format", "print the answer as `FORM`: table, json or csv")
	// The only error is a flag that does not exist.
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(f.format.of, cobra.ShellCompDirectiveNoFileComp))
	flags.StringVar(&f.out, "out", "", "put report and data into the new folder `DIR`; without it NAME-results")
}

const setUsage = "take `PATH=VALUE`, as in \"cartoner.cycle=85/min\", instead of what the file says; may be given again"

// sets are the values of --set, then that of --seed, which stands for one.
func (f *commonFlags) sets() []string {
	all := slices.Clone(f.set)
	if f.seed.given {
		all = append(all, fmt.Sprintf("run.seed=%d", f.seed.value))
	}
	return all
}

// probability reads the value of a flag that is more than 0 % and less than 100 %.
func probability(flag, text string) (float64, error) {
	value, err := quantity.Share(text)
	if err == nil && (value <= 0 || value >= 1) {
		err = errors.New("write more than 0 % and less than 100 %")
	}
	if err != nil {
		return 0, fmt.Errorf("--%s %s: %w", flag, text, err)
	}
	return value, nil
}

// span is a number of replications, or a part A-B of them.
type span struct {
	from, to int
	part     bool
}

func (s *span) String() string {
	if s.part {
		return fmt.Sprintf("%d-%d", s.from, s.to)
	}
	return ""
}

func (s *span) Type() string { return "span" }

var errSpan = errors.New("write a number of at least 2, or the first and the last as in 101-200")

func (s *span) Set(text string) error {
	first, last, part := strings.Cut(text, "-")
	if !part {
		first, last = "1", text
	}
	from, errFrom := strconv.ParseInt(strings.TrimSpace(first), 10, 32)
	to, errTo := strconv.ParseInt(strings.TrimSpace(last), 10, 32)
	if errFrom != nil || errTo != nil || from < 1 || to <= from {
		return errSpan
	}
	*s = span{int(from), int(to), part}
	return nil
}

// number is a whole number that may be left out.
type number struct {
	value uint64
	least uint64
	given bool
}

func (n *number) String() string { return "" }
func (n *number) Type() string   { return "number" }

func (n *number) Set(text string) error {
	value, err := strconv.ParseUint(text, 10, 64)
	if err != nil || value < n.least {
		return fmt.Errorf("write a whole number of at least %d", n.least)
	}
	n.value, n.given = value, true
	return nil
}

// choice is one of a few words.
type choice struct {
	of   []string
	text string
}

func (c *choice) String() string { return c.text }
func (c *choice) Type() string   { return "word" }

func (c *choice) Set(text string) error {
	if !slices.Contains(c.of, text) {
		return errors.New("write " + strings.Join(c.of[:len(c.of)-1], ", ") + " or " + c.of[len(c.of)-1])
	}
	c.text = text
	return nil
}

// unknownFlag names the nearest flag that exists.
func unknownFlag(command *cobra.Command, unknown *pflag.NotExistError) string {
	name, dashed := unknown.GetSpecifiedName(), "--"+unknown.GetSpecifiedName()
	if unknown.GetSpecifiedShortnames() != "" {
		dashed = "-" + name
	}
	var known []string
	command.Flags().VisitAll(func(flag *pflag.Flag) { known = append(known, flag.Name) })
	text := "there is no flag " + dashed
	if near, found := scenario.Nearest(name, known); found {
		return text + fmt.Sprintf("; did you mean --%s?", near)
	}
	return text + fmt.Sprintf("; 'tuckline %s --help' lists them", command.Name())
}
