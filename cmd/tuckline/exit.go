package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"tuckline/internal/study"
	"tuckline/sim"
)

// The exit codes.
const (
	done        = 0
	runFailed   = 1
	inputWrong  = 2
	interrupted = 130
)

// inputFault is a fault of the command line or of an input file.
type inputFault struct{ error }

func (f inputFault) Unwrap() error { return f.error }

// errInterrupted says that what was finished has been kept and reported.
var errInterrupted = errors.New("")

// exitCode tells people what went wrong, and other programs how.
func exitCode(err error, stderr io.Writer) int {
	if err == nil {
		return done
	}
	if text := err.Error(); text != "" {
		fmt.Fprintln(stderr, text)
	}
	switch {
	case errors.Is(err, errInterrupted), errors.Is(err, study.ErrNothingKept):
		return interrupted
	case isInputFault(err):
		return inputWrong
	default:
		return runFailed
	}
}

func isInputFault(err error) bool {
	return errors.As(err, new(inputFault)) ||
		errors.As(err, new(*study.InputError)) || errors.As(err, new(sim.Problems))
}

// noArguments answers words behind the program's name with the nearest command.
func noArguments(command *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	text := fmt.Sprintf("there is no command %q", args[0])
	if near := command.SuggestionsFor(args[0]); len(near) > 0 {
		text += fmt.Sprintf("; did you mean %q?", strings.Join(near, `" or "`))
	}
	return inputFault{errors.New(text + "\nThe commands: " + commandNames(command))}
}

func commandNames(command *cobra.Command) string {
	var names []string
	for _, one := range command.Commands() {
		if one.IsAvailableCommand() {
			names = append(names, one.Name())
		}
	}
	return strings.Join(names, ", ")
}

// noMore refuses words behind a command that takes none.
func noMore(command *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return inputFault{fmt.Errorf("%s takes no %q: type tuckline %s", command.Name(), args[0], command.Name())}
}

// oneFile asks for exactly one scenario file.
func oneFile(command *cobra.Command, args []string) error {
	switch len(args) {
	case 1:
		return nil
	case 0:
		return inputFault{fmt.Errorf("which scenario? Type: tuckline %s FILE", command.Name())}
	default:
		return inputFault{fmt.Errorf("one scenario file is needed, %d were given: %s", len(args), strings.Join(args, ", "))}
	}
}

// flagFault puts what the flag library says into the words of people.
func flagFault(command *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var invalid *pflag.InvalidValueError
	var missing *pflag.ValueRequiredError
	switch {
	case errors.As(err, &unknown):
		return inputFault{errors.New(unknownFlag(command, unknown))}
	case errors.As(err, &invalid):
		flag := invalid.GetFlag()
		return inputFault{fmt.Errorf("--%s %s: %s", flag.Name, invalid.GetValue(), invalid.Unwrap())}
	case errors.As(err, &missing):
		_, usage := pflag.UnquoteUsage(missing.GetFlag())
		return inputFault{fmt.Errorf("--%s: the value is missing: %s", missing.GetFlag().Name, usage)}
	}
	return inputFault{err}
}
