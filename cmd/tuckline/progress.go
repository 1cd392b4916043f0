package main

import (
	"fmt"
	"io"
	"os"
	"time"

	"golang.org/x/term"
)

// progressEvery is how often the line is written anew.
const progressEvery = 200 * time.Millisecond

// progress shows on a terminal how far the runs are. Elsewhere it is nil.
type progress struct {
	out         io.Writer
	begun, last time.Time
}

// progressOn is nil unless the writer is a terminal.
func progressOn(out io.Writer) *progress {
	f, ok := out.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return nil
	}
	return &progress{out: out, begun: time.Now()}
}

// show is told after each run.
func (p *progress) show(done, total int) {
	if now := time.Now(); done == total || now.Sub(p.last) >= progressEvery {
		p.last = now
		left := time.Duration(float64(now.Sub(p.begun)) / float64(done) * float64(total-done))
		fmt.Fprintf(p.out, "\r\x1b[K%d of %d runs, about %s left", done, total, left.Round(time.Second))
	}
}

// clear takes the line away.
func (p *progress) clear() { fmt.Fprint(p.out, "\r\x1b[K") }
