package scenario_test

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"tuckline/internal/scenario"
	"tuckline/scenarios"
)

// schema is as much of JSON Schema as the format uses; a keyword that is not
// here makes the test fail, so that none is passed over.
type schema map[string]any

var keywords = []string{"$schema", "$defs", "$ref", "type", "properties", "additionalProperties", "required", "anyOf", "items", "enum", "const", "pattern", "minimum", "title", "description", "examples"}

// fault finds why a value does not fit, or "".
func (s schema) fault(root schema, v any, path string) string {
	for key := range s {
		if !slices.Contains(keywords, key) {
			return "the test does not know the keyword " + key
		}
	}
	if ref, ok := s["$ref"].(string); ok {
		name, _ := url.PathUnescape(strings.TrimPrefix(ref, "#/$defs/"))
		def, found := root["$defs"].(map[string]any)[name]
		if !found {
			return "there is no definition " + name
		}
		if fault := schema(def.(map[string]any)).fault(root, v, path); fault != "" {
			return fault
		}
	}
	for _, check := range []func(schema, any, string) string{s.ofType, s.ofText, s.ofObject, s.ofList, s.ofAny} {
		if fault := check(root, v, path); fault != "" {
			return fault
		}
	}
	return ""
}

func (s schema) ofType(_ schema, v any, path string) string {
	kinds := map[string]bool{"string": false, "object": false, "array": false, "number": false, "integer": false}
	switch v := v.(type) {
	case string:
		kinds["string"] = true
	case map[string]any:
		kinds["object"] = true
	case []any:
		kinds["array"] = true
	case float64:
		kinds["number"], kinds["integer"] = true, v == float64(int64(v))
	}
	if kind, ok := s["type"].(string); ok && !kinds[kind] {
		return path + " is not of type " + kind
	}
	if want, ok := s["const"]; ok && !reflect.DeepEqual(want, v) {
		return fmt.Sprintf("%s is not %v", path, want)
	}
	return ""
}

func (s schema) ofText(_ schema, v any, path string) string {
	text, isText := v.(string)
	if enum, ok := s["enum"].([]any); ok && !slices.Contains(enum, v) {
		return fmt.Sprintf("%s is none of %v", path, enum)
	}
	if pattern, ok := s["pattern"].(string); ok && isText && !regexp.MustCompile(pattern).MatchString(text) {
		return fmt.Sprintf("%s: %q does not match %s", path, text, pattern)
	}
	return ""
}

func (s schema) ofObject(root schema, v any, path string) string {
	object, isObject := v.(map[string]any)
	if !isObject {
		return ""
	}
	if needed, ok := s["required"].([]any); ok {
		for _, key := range needed {
			if _, found := object[key.(string)]; !found {
				return fmt.Sprintf("%s has no %v", path, key)
			}
		}
	}
	properties, _ := s["properties"].(map[string]any)
	for key, value := range object {
		inside, known := properties[key].(map[string]any)
		if more, ok := s["additionalProperties"].(map[string]any); !known && ok {
			inside, known = more, true
		}
		if s["additionalProperties"] == false && !known {
			return path + " has an unknown key " + key
		}
		if known {
			if fault := schema(inside).fault(root, value, path+"."+key); fault != "" {
				return fault
			}
		}
	}
	return ""
}

func (s schema) ofList(root schema, v any, path string) string {
	items, ok := s["items"].(map[string]any)
	list, isList := v.([]any)
	if !ok || !isList {
		return ""
	}
	for i, item := range list {
		if fault := schema(items).fault(root, item, fmt.Sprintf("%s[%d]", path, i)); fault != "" {
			return fault
		}
	}
	return ""
}

func (s schema) ofAny(root schema, v any, path string) string {
	choices, ok := s["anyOf"].([]any)
	if !ok {
		return ""
	}
	var faults []string
	for _, choice := range choices {
		fault := schema(choice.(map[string]any)).fault(root, v, path)
		if fault == "" {
			return ""
		}
		faults = append(faults, fault)
	}
	return strings.Join(faults, "; ")
}

// asJSON reads YAML the way an editor does before it holds it against the schema.
func asJSON(t *testing.T, text []byte) any {
	t.Helper()
	raw, err := yaml.YAMLToJSON(text)
	if err != nil {
		t.Fatal(err)
	}
	var v any
	if err := json.Unmarshal(raw, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

func TestSchema(t *testing.T) {
	text, err := scenario.Schema()
	if err != nil {
		t.Fatal(err)
	}
	var root schema
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	examples, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil || len(examples) < 5 {
		t.Fatalf("%d examples: %v", len(examples), err)
	}
	for _, name := range examples {
		file, err := scenarios.FS.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if fault := root.fault(root, asJSON(t, file), name); fault != "" {
			t.Errorf("the schema refuses %s: %s", name, fault)
		}
	}
	second, err := filepath.Glob(secondWords + "*.yaml")
	if err != nil || len(second) < 20 {
		t.Fatalf("%d files: %v", len(second), err)
	}
	more, err := filepath.Glob(wholeWords + "*.yaml")
	if err != nil || len(more) < 9 {
		t.Fatalf("%d files: %v", len(more), err)
	}
	second = append(second, more...)
	for _, name := range second {
		file, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if fault := root.fault(root, asJSON(t, file), name); fault != "" {
			t.Errorf("the schema refuses %s: %s", name, fault)
		}
	}
	good := "tuckline: 1\nline: [{station: a, cycle: 60/min, gives: 4 blisters}, {buffer: b, holds: 240 blisters}, {station: c, takes: 2 blisters, gives: 1 carton, cycle: {dist: exponential, mean: 1 s}}]\n"
	if fault := root.fault(root, asJSON(t, []byte(good)), ""); fault != "" {
		t.Errorf("the schema refuses a good line: %s", fault)
	}
	for _, change := range [][2]string{
		{"tuckline: 1", "tuckline: 2"},
		{"cycle: 60/min", "cycle: 60"},
		{"cycle: 60/min", "cycel: 60/min"},
		{"cycle: 60/min, ", ""},
		{"holds: 240 blisters", "holds: 240,5 blisters"},
		{"holds: 240 blisters", "kind: beside, holds: 2"},
		{"dist: exponential", "dist: expo"},
		{"line: [", "calendar: x\nline: ["},
		{"gives: 4 blisters", "rejects: 0.8"},
		{"gives: 4 blisters", "web: 264 mm"},
		{"gives: 4 blisters", "loads: always"},
		{"gives: 4 blisters", "sends: {to: [b, c], rule: at random}"},
		{"gives: 4 blisters", "sends: {to: [b, c]}"},
		{"takes: 2 blisters", "takes: {b: 2 blisters, d: 1 mm, e: [1]}"},
		{"takes: 2 blisters", "after stop: {scrap: many}"},
		{"line: [", "run: {replications: {at most: 400}}\nline: ["},
		{"line: [", "run: {warm-up: automatic}\nline: ["},
		{"gives: 4 blisters", "reject runs: {enter: 0.3 %, share: 30 %, length: 12 cycles}"},
		{"gives: 4 blisters", "reject runs: {enter: 0.3 per 1000 cycles, share: 30 %}"},
		{"gives: 4 blisters", "stop after: 3, reset: {crew: operators}"},
		{"gives: 4 blisters", "checks: {test: {every: 45, takes: 12 blisters, lasts: 3 min}}"},
		{"gives: 4 blisters", "incomplete stack: go on"},
		{"gives: 4 blisters", "closing: {by: glue}"},
		{"gives: 4 blisters", "closing: {by: hot melt, heat-up: soon}"},
		{"gives: 4 blisters", "lanes: {holds: 8 blisters}"},
		{"gives: 4 blisters", "lanes: {rate: 300 blisters}"},
		{"gives: 4 blisters", "consumes: {foil: {per cycle: 132 mm, change by: robot}}"},
		{"gives: 4 blisters", "consumes: {foil: {per cycle: 132 mm, web store: {length: 8 m}}}"},
		{"gives: 4 blisters", "consumes: {foil: {per cycle: 1 blank, mis-picks: {retries: 2}}}"},
		{"holds: 240 blisters", "holds: 240 blisters, leaves: last in"},
		{"holds: 240 blisters", "holds: 240 blisters, surplus: 20"},
		{"holds: 240 blisters", "holds: 240 blisters, returns: {share: 0.5, inspection: 1 min}"},
		{"holds: 240 blisters", "holds: 240 blisters, stops: {jam: {every: 900 blisters, lasts: 1 min, scraps: yes}}"},
		{"buffer: b", "store: b"},
	} {
		if fault := root.fault(root, asJSON(t, []byte(strings.Replace(good, change[0], change[1], 1))), ""); fault == "" {
			t.Errorf("the schema takes %s in place of %s", change[1], change[0])
		}
	}
}
