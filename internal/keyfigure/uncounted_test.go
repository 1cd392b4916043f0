package keyfigure

import (
	"strings"
	"testing"

	"tuckline/internal/scenario"
)

// Without answer: the last station is counted. What another end of the line
// gives in the same pieces is then missing, and that is said.
func TestEndOfLineThatIsNotCounted(t *testing.T) {
	const line = `line:
  - {station: web, cycle: 60/min, gives: 4 blisters}
  - {buffer: store, holds: 100 blisters}
  - {station: cartoner 1, from: store, cycle: 60/min, takes: 2 blisters, gives: 1 carton}
  - {station: cartoner 2, from: store, cycle: 60/min, takes: 2 blisters, gives: 1 carton}
`
	const want = "What cartoner 1 gives leaves the line and is not counted: to add it up, write answer: {counted after: [cartoner 1, cartoner 2]}."
	for head, warned := range map[string]bool{
		"tuckline: 1\n": true,
		"tuckline: 1\nanswer: {counted after: [cartoner 1, cartoner 2]}\n": false,
		"tuckline: 1\nanswer: {counted after: web}\n":                      false,
	} {
		s, err := scenario.Read("ends.yaml", []byte(head+line), scenario.Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := strings.Join(Derive(s).Warnings, "\n")
		if strings.Contains(got, want) != warned || strings.Contains(got, "not counted") != warned {
			t.Errorf("%q: %s", head, got)
		}
	}
}
