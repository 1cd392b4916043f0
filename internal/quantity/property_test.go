package quantity_test

import (
	"regexp"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/quantity"
)

// dimension is one kind of value with its reading and writing.
type dimension struct {
	name, pattern string
	read          func(string) (float64, error)
	write         func(float64) string
	most          float64
}

var dimensions = []dimension{
	{"duration", quantity.DurationPattern(), quantity.Duration, quantity.FormatDuration, 1e16},
	{"length", quantity.LengthPattern(), quantity.Length, quantity.FormatLength, 1e16},
	{"mass", quantity.MassPattern(), quantity.Mass, quantity.FormatMass, 1e16},
	{"speed", quantity.SpeedPattern(), quantity.Speed, quantity.FormatSpeed, 1e12},
	{"number", quantity.NumberPattern(), quantity.Number, quantity.FormatNumber, 1e16},
}

// TestWrittenReadsBackEqual: whatever is written is read as exactly the same
// value, and matches the pattern of the schema.
func TestWrittenReadsBackEqual(t *testing.T) {
	for _, d := range dimensions {
		pattern := regexp.MustCompile(d.pattern)
		t.Run(d.name, rapid.MakeCheck(func(t *rapid.T) {
			value := rapid.Float64Range(0, d.most).Draw(t, "value")
			text := d.write(value)
			if got, err := d.read(text); err != nil || got != value {
				t.Fatalf("%v was written as %q and read as %v (%v)", value, text, got, err)
			}
			if !pattern.MatchString(text) {
				t.Fatalf("%q does not match %s", text, d.pattern)
			}
		}))
	}
}

// TestShareReadsBackEqual does the same for percentages that people write.
func TestShareReadsBackEqual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := float64(rapid.IntRange(0, 1_000_000).Draw(t, "thousandths of a percent")) / 1000 / 100
		text := quantity.FormatShare(share)
		if got, err := quantity.Share(text); err != nil || got != share {
			t.Fatalf("%v was written as %q and read as %v (%v)", share, text, got, err)
		}
	})
}

func TestRatesCountsAndAgesReadBackEqual(t *testing.T) {
	names := rapid.SampledFrom([]string{"", "cartons", "blister", "end blanks", "print-and-check labels"})
	rapid.Check(t, func(t *rapid.T) {
		rate := quantity.Rate{
			Number: rapid.Float64Range(1e-9, 1e9).Draw(t, "number"), Of: names.Draw(t, "of"),
			Per: rapid.SampledFrom([]float64{1e6, 60e6, 3600e6}).Draw(t, "per"),
		}
		if got, err := quantity.ParseRate(rate.Format()); err != nil || got != rate {
			t.Fatalf("%+v was written as %q and read as %+v (%v)", rate, rate.Format(), got, err)
		}
		count := quantity.Count{N: rapid.Int64Range(0, quantity.LargestCount).Draw(t, "pieces"), Unit: names.Draw(t, "unit")}
		if got, err := quantity.ParseCount(count.Format()); err != nil || got != count {
			t.Fatalf("%+v was written as %q and read as %+v (%v)", count, count.Format(), got, err)
		}
		age := quantity.Age{Value: rapid.Float64Range(0, 1e16).Draw(t, "age"), Clock: quantity.Clock(rapid.IntRange(0, int(quantity.Calendar)).Draw(t, "clock"))}
		if age.Clock == quantity.Pieces {
			age.Unit = "cartons"
		}
		if got, err := quantity.ParseAge(age.Format()); err != nil || got != age {
			t.Fatalf("%+v was written as %q and read as %+v (%v)", age, age.Format(), got, err)
		}
	})
}

// TestAnyTextIsAnswered: reading never panics, and never gives a value that is not finite.
func TestAnyTextIsAnswered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[-+0-9 ._,eE]{0,12} ?(s|min|mm|%|/min|m/min|cycles| to 5 s)?`)).Draw(t, "text")
		for _, d := range dimensions {
			if value, err := d.read(text); err == nil && (value != value || value > 1e300 || value < -1e300) {
				t.Fatalf("%q was read as %v", text, value)
			}
		}
		if rate, err := quantity.ParseRate(text); err == nil && !(rate.Period() > 0 && rate.Period() < 1e300) {
			t.Fatalf("%q was read as %+v", text, rate)
		}
		_, _ = quantity.Share(text)
		_, _ = quantity.ParseCount(text)
		_, _ = quantity.ParseAge(text)
		_, _, _ = quantity.Span(text)
	})
}
