package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

// Progress belongs on a terminal; whatever else takes its place gets none.
func TestProgressOnATerminalOnly(t *testing.T) {
	if progressOn(&bytes.Buffer{}) != nil {
		t.Error("progress is shown where no terminal is")
	}
}

func TestProgressLine(t *testing.T) {
	var out bytes.Buffer
	p := &progress{out: &out, begun: time.Now().Add(-10 * time.Second)}
	p.show(10, 40)
	p.show(11, 40) // too soon after the last
	p.show(40, 40)
	p.clear()
	const want = "\r\x1b[K10 of 40 runs, about 30s left\r\x1b[K40 of 40 runs, about 0s left\r\x1b[K"
	if got := out.String(); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if strings.Contains(out.String(), "\n") {
		t.Error("the line does not stay where it is")
	}
}
