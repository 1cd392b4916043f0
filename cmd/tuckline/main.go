// Command tuckline simulates lines that turn foil and tablets into blisters
// and blisters into cartons, and answers with intervals.
package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is the whole program: arguments in, text out, and the exit code.
func run(args []string, stdout, stderr io.Writer) int {
	ctx, release := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer release()
	// A second signal ends the program at once.
	context.AfterFunc(ctx, release)
	root := rootCommand(terminal{stdout, stderr})
	root.SetArgs(args)
	return exitCode(root.ExecuteContext(ctx), stderr)
}

// terminal is where a command writes: answers, and what is said beside them.
type terminal struct{ out, err io.Writer }
