package scenario

import (
	"encoding/json"
	"reflect"
	"regexp"
	"strings"

	"github.com/invopop/jsonschema"

	"tuckline/internal/quantity"
)

// wordTypes are all places of the file that have words, in the order of the
// page that explains them.
var wordTypes = []reflect.Type{
	reflect.TypeFor[fileWords](), reflect.TypeFor[projectWords](), reflect.TypeFor[productWords](),
	reflect.TypeFor[doseWords](), reflect.TypeFor[blisterWords](), reflect.TypeFor[cartonWords](),
	reflect.TypeFor[bundleWords](), reflect.TypeFor[caseWords](), reflect.TypeFor[answerWords](),
	reflect.TypeFor[orderWords](), reflect.TypeFor[changeoverWords](), reflect.TypeFor[setUpWords](),
	reflect.TypeFor[runWords](), reflect.TypeFor[replicationsWords](), reflect.TypeFor[startWords](),
	reflect.TypeFor[calendarWords](), reflect.TypeFor[shiftWords](), reflect.TypeFor[breakWords](), reflect.TypeFor[duringWords](),
	reflect.TypeFor[cleaningWords](), reflect.TypeFor[overtimeWords](), reflect.TypeFor[crewWords](), reflect.TypeFor[elsewhereWords](),
	reflect.TypeFor[stationWords](), reflect.TypeFor[stepWords](),
	reflect.TypeFor[sendsWords](), reflect.TypeFor[groupWords](), reflect.TypeFor[scrapWords](), reflect.TypeFor[webWords](),
	reflect.TypeFor[sealingWords](), reflect.TypeFor[stopWords](), reflect.TypeFor[rejectRunsWords](), reflect.TypeFor[resetWords](),
	reflect.TypeFor[inspectionWords](), reflect.TypeFor[checkWords](), reflect.TypeFor[stackWords](), reflect.TypeFor[closingWords](),
	reflect.TypeFor[lanesWords](), reflect.TypeFor[materialWords](),
	reflect.TypeFor[reelWords](), reflect.TypeFor[stockWords](), reflect.TypeFor[refillWords](), reflect.TypeFor[prepareWords](),
	reflect.TypeFor[webStoreWords](), reflect.TypeFor[misPicksWords](),
	reflect.TypeFor[conveyorWords](), reflect.TypeFor[sensorsWords](), reflect.TypeFor[sensorWords](),
	reflect.TypeFor[keyFiguresWords](), reflect.TypeFor[reportedWords](), reflect.TypeFor[agreementWords](),
	reflect.TypeFor[bufferWords](), reflect.TypeFor[levelsWords](), reflect.TypeFor[returnsWords](), reflect.TypeFor[storeStopWords](),
}

// Schema is the JSON Schema of scenario files, made from the Go types that read them.
func Schema() ([]byte, error) {
	r := &jsonschema.Reflector{
		Anonymous: true, FieldNameTag: "yaml", RequiredFromJSONSchemaTags: true, Namer: schemaName,
		LookupComment: func(t reflect.Type, field string) string {
			f, _ := t.FieldByName(field)
			return f.Tag.Get("about")
		},
	}
	defs := jsonschema.Definitions{}
	for _, t := range wordTypes {
		for name, s := range r.ReflectFromType(t).Definitions {
			defs[name] = s
		}
	}
	for _, t := range wordTypes {
		describe(defs[schemaName(t)], t)
	}
	lineOrLines(defs[schemaName(wordTypes[0])])
	addGeneral(defs)
	defs[schemaName(reflect.TypeFor[shiftPeople]())] = shiftPeople{}.JSONSchema()
	bareToo(defs, reflect.TypeFor[crewWords](), wholeFrom("1")...)
	bareToo(defs, reflect.TypeFor[replicationsWords](), wholeFrom("2")...)
	bareToo(defs, reflect.TypeFor[duringWords](), &jsonschema.Schema{Const: standsInBreaks})
	bareToo(defs, reflect.TypeFor[resetWords](), durationSchema())
	bareToo(defs, reflect.TypeFor[stackWords](), &jsonschema.Schema{Type: "string", Enum: []any{"wait", "empty pocket"}})
	root := *defs[schemaName(wordTypes[0])]
	root.Version, root.Title, root.Definitions = jsonschema.Version, "Tuckline scenario", defs
	delete(defs, schemaName(wordTypes[0]))
	return json.MarshalIndent(&root, "", "  ")
}

// bareToo lets bare values stand in place of a group of words.
func bareToo(defs jsonschema.Definitions, t reflect.Type, bare ...*jsonschema.Schema) {
	name := schemaName(t)
	defs[name+" in words"] = defs[name]
	defs[name] = &jsonschema.Schema{AnyOf: append(bare, refTo(name+" in words"))}
}

// wholeFrom is a bare whole number from a least one.
func wholeFrom(least json.Number) []*jsonschema.Schema {
	return []*jsonschema.Schema{{Type: "integer", Minimum: least}, {Type: "string", Pattern: quantity.NumberPattern()}}
}

var generic = regexp.MustCompile(`^(\w+)\[.*?(\w+)\]$`)

// schemaName is the name of a definition: "station" for stationWords.
func schemaName(t reflect.Type) string {
	name := t.Name()
	if parts := generic.FindStringSubmatch(name); parts != nil {
		name = parts[2] + " by name"
		if parts[1] != "named" {
			name = parts[2] + " or several"
		}
	}
	return strings.Replace(name, "Words", "", 1)
}

func refTo(name string) *jsonschema.Schema {
	return &jsonschema.Schema{Ref: "#/$defs/" + strings.ReplaceAll(name, " ", "%20")}
}

// describe adds what the tags of a struct of words say.
func describe(s *jsonschema.Schema, t reflect.Type) {
	for _, w := range wordsOf(t).words {
		property, found := s.Properties.Get(w.name)
		if !found {
			continue
		}
		if of := w.tag.Get("of"); of != "" {
			one := property
			if _, several := reflect.New(t.Field(w.field).Type).Interface().(container); several {
				one = &jsonschema.Schema{}
				property.Ref, property.AnyOf = "", []*jsonschema.Schema{one, {Type: "array", Items: one}}
			}
			one.Ref, one.Type = "", "string"
			for word := range strings.SplitSeq(of, "|") {
				one.Enum = append(one.Enum, word)
			}
		}
		property.Examples = []any{w.eg()}
	}
	s.Required = needed(t)
	if _, copies := wordsOf(t).find("like"); copies { // what is copied need not be written
		all := s.Required
		s.Required = all[:1]
		s.AnyOf = []*jsonschema.Schema{{Required: all}, {Required: []string{"like"}}}
	}
	if rest := wordsOf(t).rest; rest >= 0 {
		s.Properties.Delete("*")
		s.AdditionalProperties = refTo(schemaName(t.Field(rest).Type.Field(1).Type.Elem().Field(2).Type))
	}
}

func needed(t reflect.Type) []string {
	var names []string
	for _, w := range wordsOf(t).words {
		if w.tag.Get("need") == "yes" {
			names = append(names, w.name)
		}
	}
	return names
}

// addGeneral adds what stands in place of any value: a guessed range, a law.
func addGeneral(defs jsonschema.Definitions) {
	object := func(required ...string) *jsonschema.Schema {
		return &jsonschema.Schema{Type: "object", Properties: jsonschema.NewProperties(), Required: required, AdditionalProperties: jsonschema.FalseSchema}
	}
	value := &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string"}, {Type: "number"}}}
	guess := object("likely", "low", "high")
	for _, key := range guess.Required {
		guess.Properties.Set(key, value)
	}
	guess.Description = "A guessed range in place of a value; the likely one is used."
	defs["guess"] = guess
	law := object("dist")
	law.Properties.Set("dist", &jsonschema.Schema{Type: "string", Enum: anyOf(lawNames())})
	for _, key := range []string{"mean", "cv", "k", "shape", "scale", "low", "likely", "high", "step", "plus", "weight"} {
		law.Properties.Set(key, &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string"}, {Type: "number"}, refTo("guess")}})
	}
	law.Properties.Set("values", &jsonschema.Schema{Type: "object", AdditionalProperties: &jsonschema.Schema{Type: "number"}})
	law.Properties.Set("file", &jsonschema.Schema{Type: "string"})
	law.Properties.Set("column", &jsonschema.Schema{Type: "string"})
	law.Description = "A law: exponential and geometric by mean, most others by mean and cv."
	defs["law"] = law
	mixture := object("mixture")
	mixture.Properties.Set("mixture", &jsonschema.Schema{Type: "array", Items: refTo("law")})
	mixture.Properties.Set("plus", value)
	defs["mixture"] = mixture
}

func anyOf(words []string) []any {
	var all []any
	for _, w := range words {
		all = append(all, w)
	}
	return all
}
