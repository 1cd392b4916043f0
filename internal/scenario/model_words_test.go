package scenario

import (
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"

	"tuckline/scenarios"
	"tuckline/sim"
)

// readAll reads every good file of the tests and every example.
func readAll(t *testing.T) map[string]*Scenario {
	t.Helper()
	all := map[string]*Scenario{}
	add := func(name string, text []byte, err error) {
		if err != nil {
			t.Fatal(err)
		}
		s, err := Read(name, text, Options{})
		if err != nil {
			t.Fatalf("%s\n%v", name, err)
		}
		all[name] = s
	}
	for _, folder := range []string{"second-words", "whole-words"} {
		files, err := filepath.Glob("../../testdata/" + folder + "/*.yaml")
		if err != nil || len(files) < 9 {
			t.Fatalf("%d files in %s: %v", len(files), folder, err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			add(file, text, err)
		}
	}
	names, err := fs.Glob(scenarios.FS, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := scenarios.FS.ReadFile(name)
		add(name, text, err)
	}
	return all
}

// leaves calls f for every single value inside v, with the names of type and field that lead to it.
func leaves(v reflect.Value, name string, f func(name string, leaf reflect.Value)) {
	if v.Type() == reflect.TypeFor[sim.Law]() {
		f(name, v)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			leaves(v.Field(i), v.Type().Name()+"."+v.Type().Field(i).Name, f)
		}
	case reflect.Slice:
		for i := range v.Len() {
			leaves(v.Index(i), name, f)
		}
	default:
		f(name, v)
	}
}

// fieldsOf lists every field of a type, down to single values.
func fieldsOf(t reflect.Type, name string, into map[string]bool) {
	switch {
	case t == reflect.TypeFor[sim.Law]() || t.Kind() != reflect.Struct && t.Kind() != reflect.Slice:
		into[name] = true
	case t.Kind() == reflect.Slice:
		fieldsOf(t.Elem(), name, into)
	default:
		for i := range t.NumField() {
			fieldsOf(t.Field(i).Type, t.Name()+"."+t.Field(i).Name, into)
		}
	}
}

// TestEveryFieldOfTheModelIsWritten: whatever the model of a line knows, some word of the format says.
func TestEveryFieldOfTheModelIsWritten(t *testing.T) {
	known, written := map[string]bool{}, map[string]bool{}
	fieldsOf(reflect.TypeFor[sim.Line](), "Line", known)
	for _, s := range readAll(t) {
		leaves(reflect.ValueOf(s.Line), "Line", func(name string, leaf reflect.Value) {
			if law, is := leaf.Interface().(sim.Law); is && !law.IsZero() || !is && !leaf.IsZero() {
				written[name] = true
			}
		})
	}
	var missing []string
	for name := range known {
		if !written[name] {
			missing = append(missing, name)
		}
	}
	slices.Sort(missing)
	if len(missing) > 0 {
		t.Errorf("no file of the tests sets %q", missing)
	}
}

// TestHashHoldsEveryField changes the values of a model one by one.
func TestHashHoldsEveryField(t *testing.T) {
	changed := 0
	for file, s := range readAll(t) {
		before := s.Hash()
		leaves(reflect.ValueOf(&s.Line).Elem(), "Line", func(name string, leaf reflect.Value) {
			old := reflect.New(leaf.Type()).Elem()
			old.Set(leaf)
			switch leaf.Kind() {
			case reflect.Bool:
				leaf.SetBool(!leaf.Bool())
			case reflect.String:
				leaf.SetString(leaf.String() + "x")
			case reflect.Float64:
				leaf.SetFloat(leaf.Float() + 0.125)
			case reflect.Int, reflect.Int64:
				leaf.SetInt(leaf.Int() + 1)
			case reflect.Uint8:
				leaf.SetUint(leaf.Uint() + 1)
			default:
				if leaf.Type() != reflect.TypeFor[sim.Law]() { // the hash has laws by their parameters
					t.Fatalf("%s is a %s", name, leaf.Kind())
				}
				return
			}
			if s.Hash() == before {
				t.Errorf("%s: %s changes nothing in the hash", file, name)
			}
			leaf.Set(old)
			changed++
		})
		// Every law of the line is among those of the hash.
		laws := 0
		leaves(reflect.ValueOf(s.Line), "Line", func(_ string, leaf reflect.Value) {
			if law, is := leaf.Interface().(sim.Law); is && !law.IsZero() {
				laws++
			}
		})
		noted := 0
		for _, law := range s.laws {
			if law != ": " {
				noted++
			}
		}
		if laws != noted {
			t.Errorf("%s: the line has %d laws, the hash %d: %q", file, laws, noted, s.laws)
		}
	}
	if changed < 5000 {
		t.Errorf("only %d changes were tried", changed)
	}
}
