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
	reflect.TypeFor[runWords](), reflect.TypeFor[replicationsWords](), reflect.TypeFor[startWords](), reflect.TypeFor[crewWords](),
	reflect.TypeFor[elsewhereWords](), reflect.TypeFor[stationWords](), reflect.TypeFor[stepWords](),
	reflect.TypeFor[sendsWords](), reflect.TypeFor[groupWords](), reflect.TypeFor[scrapWords](), reflect.TypeFor[webWords](),
	reflect.TypeFor[sealingWords](), reflect.TypeFor[stopWords](), reflect.TypeFor[materialWords](),
	reflect.TypeFor[reelWords](), reflect.TypeFor[stockWords](), reflect.TypeFor[refillWords](),
	reflect.TypeFor[conveyorWords](), reflect.TypeFor[bufferWords](), reflect.TypeFor[levelsWords](),
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
	addGeneral(defs)
	bareToo(defs, reflect.TypeFor[crewWords](), "1")
	bareToo(defs, reflect.TypeFor[replicationsWords](), "2")
	root := *defs[schemaName(wordTypes[0])]
	root.Version, root.Title, root.Definitions = jsonschema.Version, "Tuckline scenario", defs
	delete(defs, schemaName(wordTypes[0]))
	return json.MarshalIndent(&root, "", "  ")
}

// bareToo lets a bare number from a least one stand in place of a group of words.
func bareToo(defs jsonschema.Definitions, t reflect.Type, least json.Number) {
	name := schemaName(t)
	defs[name+" in words"] = defs[name]
	defs[name] = &jsonschema.Schema{AnyOf: []*jsonschema.Schema{
		{Type: "integer", Minimum: least}, {Type: "string", Pattern: quantity.NumberPattern()}, refTo(name + " in words"),
	}}
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
			property.Ref, property.Type = "", "string"
			for word := range strings.SplitSeq(of, "|") {
				property.Enum = append(property.Enum, word)
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

// textSchema makes the schema of a value by its pattern.
func textSchema(what, pattern string, more ...*jsonschema.Schema) *jsonschema.Schema {
	return &jsonschema.Schema{
		Description: what,
		AnyOf:       append([]*jsonschema.Schema{{Type: "string", Pattern: pattern}, refTo("guess")}, more...),
	}
}

var bareNumber = &jsonschema.Schema{Type: "number"}

// The schemas of single values.

func (text) JSONSchema() *jsonschema.Schema {
	return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string"}, {Type: "number"}}}
}
func (formatNumber) JSONSchema() *jsonschema.Schema { return &jsonschema.Schema{Const: 1} }
func (choice) JSONSchema() *jsonschema.Schema       { return &jsonschema.Schema{Type: "string"} }
func (whole) JSONSchema() *jsonschema.Schema {
	return textSchema("a whole number", quantity.NumberPattern(), &jsonschema.Schema{Type: "integer"})
}

func (factor) JSONSchema() *jsonschema.Schema {
	return textSchema("a bare number", quantity.NumberPattern(), bareNumber)
}

func (fraction) JSONSchema() *jsonschema.Schema {
	return textSchema("a share, 0.45 or 45 %", quantity.SharePattern(), bareNumber)
}

func (share) JSONSchema() *jsonschema.Schema {
	return textSchema("a percentage", quantity.SharePattern())
}

func (duration) JSONSchema() *jsonschema.Schema {
	return textSchema("a time", quantity.DurationPattern())
}

func (length) JSONSchema() *jsonschema.Schema {
	return textSchema("a length", quantity.LengthPattern())
}
func (mass) JSONSchema() *jsonschema.Schema { return textSchema("a mass", quantity.MassPattern()) }
func (speed) JSONSchema() *jsonschema.Schema {
	return textSchema("a speed of a belt", quantity.SpeedPattern())
}

func (pace) JSONSchema() *jsonschema.Schema {
	return textSchema("a speed, or the time of a cycle", quantity.RatePattern(), durationSchema())
}

func (stepPace) JSONSchema() *jsonschema.Schema {
	return textSchema("top speed, or a speed", quantity.RatePattern(), durationSchema(), &jsonschema.Schema{Const: "top speed"})
}

func (count) JSONSchema() *jsonschema.Schema {
	return textSchema("pieces", quantity.CountPattern(), &jsonschema.Schema{Type: "integer"})
}

func (cycles) JSONSchema() *jsonschema.Schema {
	return textSchema("cycles", quantity.CountPattern())
}

func (scrapAmount) JSONSchema() *jsonschema.Schema {
	return textSchema("cycles, or a time", quantity.CountPattern(), durationSchema())
}

func (warmUp) JSONSchema() *jsonschema.Schema {
	return textSchema("a time, or auto", quantity.DurationPattern(), &jsonschema.Schema{Const: "auto"})
}

func (turnsWords) JSONSchema() *jsonschema.Schema {
	return &jsonschema.Schema{Type: "string", Description: "longest waiting, alternate, or NAME first"}
}

func (takesWords) JSONSchema() *jsonschema.Schema {
	several := &jsonschema.Schema{Type: "object", AdditionalProperties: refTo("count")}
	return textSchema("pieces, or names of places, each with pieces", quantity.CountPattern(), &jsonschema.Schema{Type: "integer"}, several)
}

func (places) JSONSchema() *jsonschema.Schema {
	return textSchema("pieces, or unlimited", quantity.CountPattern(), &jsonschema.Schema{Type: "integer"}, &jsonschema.Schema{Const: "unlimited"})
}

func (level) JSONSchema() *jsonschema.Schema {
	return textSchema("a percentage of the places, or pieces, or empty", quantity.CountPattern(),
		&jsonschema.Schema{Type: "string", Pattern: quantity.SharePattern()}, &jsonschema.Schema{Const: "empty"}, &jsonschema.Schema{Type: "integer"})
}

func (use) JSONSchema() *jsonschema.Schema {
	return textSchema("a length of web, or pieces", quantity.CountPattern(), &jsonschema.Schema{Type: "string", Pattern: quantity.LengthPattern()})
}

func (span) JSONSchema() *jsonschema.Schema {
	return &jsonschema.Schema{Type: "string", Pattern: quantity.SpanPattern()}
}
func (crewNeed) JSONSchema() *jsonschema.Schema { return &jsonschema.Schema{Type: "string"} }
func (durationLaw) JSONSchema() *jsonschema.Schema {
	return textSchema("a time, or its law", quantity.DurationPattern(), refTo("law"), refTo("mixture"))
}

func (cycleLaw) JSONSchema() *jsonschema.Schema {
	return textSchema("a speed, the time of a cycle, or its law", quantity.RatePattern(), durationSchema(), refTo("law"), refTo("mixture"))
}

func (ageLaw) JSONSchema() *jsonschema.Schema {
	return textSchema("cycles, pieces, or time on a clock; or the law", quantity.AgePattern(), refTo("law"), refTo("mixture"))
}

func (fromWords) JSONSchema() *jsonschema.Schema {
	name := &jsonschema.Schema{Type: "string"}
	supply := &jsonschema.Schema{Type: "object", Properties: jsonschema.NewProperties(), Required: []string{"supply"}, AdditionalProperties: jsonschema.FalseSchema}
	supply.Properties.Set("supply", refTo("count"))
	return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{name, {Type: "array", Items: name}, supply}}
}

func (lineWords) JSONSchema() *jsonschema.Schema {
	entry := &jsonschema.Schema{AnyOf: []*jsonschema.Schema{refTo("station"), refTo("conveyor"), refTo("buffer")}}
	return &jsonschema.Schema{Type: "array", Items: entry}
}

func (named[T]) JSONSchema() *jsonschema.Schema {
	return &jsonschema.Schema{Type: "object", AdditionalProperties: refTo(schemaName(reflect.TypeFor[T]()))}
}

func (oneOrMore[T]) JSONSchema() *jsonschema.Schema {
	one := refTo(schemaName(reflect.TypeFor[T]()))
	return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{one, {Type: "array", Items: one}}}
}

func durationSchema() *jsonschema.Schema {
	return &jsonschema.Schema{Type: "string", Pattern: quantity.DurationPattern()}
}
