package report

import (
	"os"
	"testing"
)

func TestT(t *testing.T) {
	Terminal(os.Stdout, Page{Outcome: inventedOutcome()})
}
