package report

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"tuckline/internal/scenario"
	"tuckline/internal/study"
	"tuckline/sim"
)

// shownElsewhere are the fields that the table of inputs need not show, and why.
var shownElsewhere = map[string]string{
	"sim.Station.Materials":       "their fields are tried one by one",
	"sim.Station.Stops":           "their fields are tried one by one",
	"sim.Station.Checks":          "their fields are tried one by one",
	"sim.Buffer.Stops":            "their fields are tried one by one",
	"sim.Buffer.From":             "the order of the line says it, the scenario file the rest",
	"sim.Buffer.Conveyor":         "length, speed and transit say it",
	"sim.Buffer.Full.Travel":      "pieces, pitch and speed say it",
	"sim.Buffer.Clear.Travel":     "pieces, pitch and speed say it",
	"sim.Station.Cycle":           "tried as the set speed of people, from which it comes",
	"sim.Station.From":            "the order of the line says it, the scenario file the rest",
	"sim.Crew.ElsewhereSpell":     "tried with the share",
	"sim.Material.Web":            "its unit says it",
	"scenario.Station.SetCycle":   "tried with the cycle",
	"scenario.Station.TakesUnit":  "the first station takes from supply",
	"scenario.Material.Thickness": "tried with the reel",
	"scenario.Material.Core":      "tried with the reel",
	"scenario.Material.Unusable":  "tried with the reel",
	"scenario.Material.AlarmAt":   "the same as Alarm of the model",
	"scenario.Station.Materials":  "their fields are tried one by one",
	"scenario.Buffer.Speed":       "tried with the length",
	"scenario.Buffer.Pitch":       "tried with the length",
	"sim.Stop.Clock":              "tried by itself in the test of words",
}

// every is a law that is no other value of the lines below.
var every = sim.Fixed(7.77e7)

// filled sets a value to something that it is not when nothing is written.
func filled(t *testing.T, v reflect.Value) {
	t.Helper()
	if v.Type() == reflect.TypeFor[sim.Law]() {
		v.Set(reflect.ValueOf(every))
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(v.String() + "something written")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int, reflect.Int64:
		v.SetInt(v.Int() + 7)
	case reflect.Uint8:
		v.SetUint(v.Uint() + 1)
	case reflect.Float64:
		v.SetFloat(v.Float()/2 + 0.25)
	case reflect.Struct:
		for i := range v.NumField() {
			filled(t, v.Field(i))
		}
	case reflect.Slice:
		one := reflect.New(v.Type().Elem()).Elem()
		filled(t, one)
		v.Set(reflect.Append(v, one))
	default:
		t.Fatalf("a field of kind %v", v.Kind())
	}
}

// tinyLine is a line of which every part can be filled: nothing optional is written. Its last
// station is not the first, so that what it takes is said.
func tinyLine() *scenario.Scenario {
	station := func(name, from string) sim.Station {
		return sim.Station{
			Name: name, From: from, Takes: 2, Gives: 3, Cycle: sim.Fixed(1e6),
			Stops:     []sim.Stop{{Name: "jam", Every: sim.Fixed(900), Lasts: sim.Fixed(6e7)}},
			Materials: []sim.Material{{Name: "blanks", Amount: 100, PerCycle: 1, Refill: 50, Lasts: sim.Fixed(6e7)}},
			Checks:    []sim.Check{{Name: "leak test", Every: sim.Fixed(900), Takes: 12, Lasts: sim.Fixed(6e7)}},
		}
	}
	people := scenario.Station{
		TakesUnit: "pieces", GivesUnit: "pieces", SetCycle: 1e6, TopCycle: 1e6,
		Materials: []scenario.Material{{Kind: "magazine", Unit: "blanks", AlarmAt: -1}},
	}
	return &scenario.Scenario{
		Line: sim.Line{
			Stations: []sim.Station{station("first", ""), station("last", "store")},
			Buffers: []sim.Buffer{{
				Name: "store", From: []string{"first"}, Holds: 20,
				Stops: []sim.Stop{{Name: "lift stands", Every: sim.Fixed(900), Lasts: sim.Fixed(6e7)}},
			}},
			Crews: []sim.Crew{{Name: "operators", People: 1}},
		},
		Stations: []scenario.Station{people, people},
		Buffers:  []scenario.Buffer{{Unit: "pieces"}},
	}
}

// Whatever of a line is written is among its inputs: every field of the model's data, filled in
// alone, changes the table, or stands above with the reason why it need not.
func TestEveryInputIsShown(t *testing.T) {
	parts := map[string]func(*scenario.Scenario) any{
		"sim.Station":       func(s *scenario.Scenario) any { return &s.Line.Stations[1] },
		"sim.Stop":          func(s *scenario.Scenario) any { return &s.Line.Stations[1].Stops[0] },
		"sim.Material":      func(s *scenario.Scenario) any { return &s.Line.Stations[1].Materials[0] },
		"sim.Check":         func(s *scenario.Scenario) any { return &s.Line.Stations[1].Checks[0] },
		"sim.Buffer":        func(s *scenario.Scenario) any { return &s.Line.Buffers[0] },
		"sim.Crew":          func(s *scenario.Scenario) any { return &s.Line.Crews[0] },
		"scenario.Station":  func(s *scenario.Scenario) any { return &s.Stations[1] },
		"scenario.Material": func(s *scenario.Scenario) any { return &s.Stations[1].Materials[0] },
		"scenario.Buffer":   func(s *scenario.Scenario) any { return &s.Buffers[0] },
	}
	for field := range shownElsewhere {
		path := strings.Split(field, ".")
		of, known := parts[path[0]+"."+path[1]]
		if !known {
			t.Errorf("%s stands among what is shown elsewhere and is of no part", field)
			continue
		}
		v := reflect.ValueOf(of(tinyLine())).Elem()
		for _, part := range path[2:] {
			if v = v.FieldByName(part); !v.IsValid() {
				t.Errorf("%s stands among what is shown elsewhere and is no field", field)
				break
			}
		}
	}
	plain := tableOfInputs(tinyLine())
	tried := 0
	for name, part := range parts {
		fields := reflect.TypeOf(part(tinyLine())).Elem()
		for i := range fields.NumField() {
			field := name + "." + fields.Field(i).Name
			if _, elsewhere := shownElsewhere[field]; elsewhere {
				continue
			}
			s := tinyLine()
			filled(t, reflect.ValueOf(part(s)).Elem().Field(i))
			if tableOfInputs(s) == plain {
				t.Errorf("%s is written and not shown", field)
			}
			tried += 1 + parted(t, field, s, reflect.ValueOf(part(s)).Elem().Field(i))
		}
	}
	if tried < 70 {
		t.Errorf("only %d fields were tried", tried)
	}
}

// parted changes the numbers of a field that has several, one after the other.
func parted(t *testing.T, field string, s *scenario.Scenario, v reflect.Value) (tried int) {
	t.Helper()
	if v.Kind() != reflect.Struct || v.Type() == reflect.TypeFor[sim.Law]() {
		return 0
	}
	for i := range v.NumField() {
		one, before := v.Field(i), tableOfInputs(s)
		name := field + "." + v.Type().Field(i).Name
		if _, elsewhere := shownElsewhere[name]; one.Kind() == reflect.Bool || elsewhere {
			continue
		}
		kept := reflect.New(one.Type()).Elem()
		kept.Set(one)
		if one.Type() == reflect.TypeFor[sim.Law]() {
			one.Set(reflect.ValueOf(sim.Fixed(4.44e7)))
		} else {
			filled(t, one)
		}
		if tableOfInputs(s) == before {
			t.Errorf("%s changes and the table does not", name)
		}
		one.Set(kept)
		tried += 1 + parted(t, name, s, one)
	}
	return tried
}

func tableOfInputs(s *scenario.Scenario) string {
	var b strings.Builder
	for _, row := range inputRows(&subject{Outcome: &study.Outcome{Scenario: s}}) {
		fmt.Fprintln(&b, row)
	}
	return b.String()
}
