package report

import (
	"os"
	"testing"
)

func TestWrite(t *testing.T) {
	f, err := os.Create("/tmp/report/report.html")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := HTML(f, Page{Outcome: inventedOutcome(), Version: "tuckline 0.1"}); err != nil {
		t.Fatal(err)
	}
}
