package scenario

import (
	"reflect"
	"slices"
	"strings"

	"github.com/invopop/jsonschema"

	"tuckline/internal/quantity"
)

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

func (linesWords) JSONSchema() *jsonschema.Schema {
	copied := &jsonschema.Schema{Type: "object", Properties: jsonschema.NewProperties(), Required: []string{"like"}, AdditionalProperties: &jsonschema.Schema{Type: "object"}}
	copied.Properties.Set("like", &jsonschema.Schema{Type: "string"})
	line := lineWords{}.JSONSchema()
	return &jsonschema.Schema{Type: "object", AdditionalProperties: &jsonschema.Schema{AnyOf: []*jsonschema.Schema{line, copied}}}
}

// lineOrLines wants one of two words of a scenario.
func lineOrLines(s *jsonschema.Schema) {
	s.Required = slices.DeleteFunc(s.Required, func(word string) bool { return word == "line" })
	s.AnyOf = []*jsonschema.Schema{{Required: []string{"line"}}, {Required: []string{"lines"}}}
}

func (batches) JSONSchema() *jsonschema.Schema {
	return textSchema("batches", quantity.CountPattern(), &jsonschema.Schema{Type: "integer"})
}

func (timesWords) JSONSchema() *jsonschema.Schema {
	return textSchema("a whole number, or without end", quantity.NumberPattern(), &jsonschema.Schema{Type: "integer"}, &jsonschema.Schema{Const: withoutEnd})
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

func (pieceRate) JSONSchema() *jsonschema.Schema {
	return textSchema("a rate of pieces", quantity.RatePattern())
}

func (perCycles) JSONSchema() *jsonschema.Schema {
	number := strings.Trim(quantity.NumberPattern(), "^$")
	return textSchema("how often in so many cycles", "^"+number+" per "+number+" ?cycles?$")
}

func (meanCycles) JSONSchema() *jsonschema.Schema {
	return textSchema("a mean number of cycles", quantity.CountPattern())
}

func (heatUp) JSONSchema() *jsonschema.Schema {
	return textSchema("a time, or none", quantity.DurationPattern(), &jsonschema.Schema{Const: "none"})
}

// patterns of clocks and days.
const (
	dayPattern   = "(Mon|Tue|Wed|Thu|Fri|Sat|Sun)"
	clockPattern = "([01]?[0-9]|2[0-4]):[0-5][0-9]"
)

func (clockTime) JSONSchema() *jsonschema.Schema {
	return &jsonschema.Schema{Type: "string", Description: "a time of the day", Pattern: "^" + clockPattern + "$"}
}

func (weekClock) JSONSchema() *jsonschema.Schema {
	return &jsonschema.Schema{Type: "string", Description: "a day and a time", Pattern: "^(week [1-9][0-9]* )?" + dayPattern + " " + clockPattern + "$"}
}

func (daysWords) JSONSchema() *jsonschema.Schema {
	one := &jsonschema.Schema{Type: "string", Pattern: "^" + dayPattern + "( ?[-–] ?" + dayPattern + ")?$"}
	return &jsonschema.Schema{Description: "a day, Mon-Fri, or a list", AnyOf: []*jsonschema.Schema{one, {Type: "array", Items: one}}}
}

func (persons) JSONSchema() *jsonschema.Schema {
	return &jsonschema.Schema{Description: "people", AnyOf: []*jsonschema.Schema{{Type: "string", Pattern: "^[0-9]+( (person|people))?$"}, {Type: "integer"}}}
}

func (shiftPeople) JSONSchema() *jsonschema.Schema { return whole{}.JSONSchema() }

func (runTime) JSONSchema() *jsonschema.Schema {
	return textSchema("a time; with a calendar in scheduled hours", quantity.DurationPattern())
}
