package scenario_test

import (
	"encoding/json"
	"strings"
	"testing"

	"tuckline/internal/scenario"
)

// TestSchemaOfLinesAndOrders: what is read the schema takes, and what it refuses is not read.
func TestSchemaOfLinesAndOrders(t *testing.T) {
	text, err := scenario.Schema()
	if err != nil {
		t.Fatal(err)
	}
	var root schema
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	good := "tuckline: 1\nlines: {a: [{station: b, cycle: 60/min, gives: 4 blisters}], c: {like: a, b: {cycle: 70/min}}}\n" +
		"orders: [{batch: 2400 blisters, campaign: 3 batches, times: without end, changeover: full clean}]\n" +
		"changeover: {same product: {lasts: 45 min}, format: {lasts: {dist: exponential, mean: 1 h}}, full clean: {lasts: 1 h}}\n"
	check := func(text string, fits bool) {
		t.Helper()
		_, readErr := scenario.Read("schema", []byte(text), scenario.Options{})
		if fault := root.fault(root, asJSON(t, []byte(text)), ""); (fault == "") != fits || (readErr == nil) != fits {
			t.Errorf("the schema says %q, the reader %v:\n%s", fault, readErr, text)
		}
	}
	check(good, true)
	check(strings.Replace(good, "[{batch: 2400 blisters, campaign: 3 batches, times: without end, changeover: full clean}]", "{good: 60 blisters, times: 3}", 1), true)
	for _, change := range [][2]string{
		{"lines:", "linse:"},
		{"{like: a, b: {cycle: 70/min}}", "{b: {cycle: 70/min}}"},
		{"{like: a, b: {cycle: 70/min}}", "{like: a, b: 70/min}"},
		{"{like: a, b: {cycle: 70/min}}", "70/min"},
		{"cycle: 60/min", "cycel: 60/min"},
		{"2400 blisters", "many"},
		{"3 batches", "often"},
		{"without end", "always"},
		{"changeover: full clean", "changeover: none"},
		{"lasts: 45 min", "lasts: 45"},
		{"{lasts: 45 min}", "{crew: operators}"},
		{"format:", "formats:"},
	} {
		check(strings.Replace(good, change[0], change[1], 1), false)
	}
}
