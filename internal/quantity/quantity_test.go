package quantity_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"tuckline/internal/quantity"
)

// TestReads has what is read, in base units. The factors are definitions: an inch
// is 25.4 mm, a mil a thousandth of it, a foot 12 of them.
func TestReads(t *testing.T) {
	for _, c := range []struct {
		read func(string) (float64, error)
		text string
		want float64
	}{
		{quantity.Duration, "90 s", 90e6},
		{quantity.Duration, "1.5 min", 90e6},
		{quantity.Duration, "8h", 8 * 3600e6},
		{quantity.Duration, "600 ms", 600e3},
		{quantity.Duration, "0 s", 0},
		{quantity.Duration, "2 000 s", 2000e6},
		{quantity.Duration, "2_000 s", 2000e6},
		{quantity.Duration, "2\u00a0000 s", 2000e6},
		{quantity.Duration, "1 234 567 us", 1_234_567},
		{quantity.Duration, "1e3 s", 1000e6},
		{quantity.Duration, "a week", 7 * 24 * 3600e6},
		{quantity.Duration, "1 week", 7 * 24 * 3600e6},
		{quantity.Duration, "2 days", 48 * 3600e6},
		{quantity.Duration, "1 year", 365 * 24 * 3600e6},
		{quantity.Duration, " 5 min ", 300e6},
		{quantity.Length, "132 mm", 132e3},
		{quantity.Length, "250 um", 250},
		{quantity.Length, "250 µm", 250},
		{quantity.Length, "8 m", 8e6},
		{quantity.Length, "1 in", 25_400},
		{quantity.Length, "10 mil", 254},
		{quantity.Length, "1 ft", 304_800},
		{quantity.Mass, "250 mg", 250},
		{quantity.Mass, "20 kg", 20e6},
		{quantity.Speed, "24 m/min", 400e3},
		{quantity.Speed, "400 mm/s", 400e3},
		{quantity.Share, "0.8 %", 0.008},
		{quantity.Share, "50%", 0.5},
		{quantity.Number, ".45", 0.45},
		{quantity.Number, "-3", -3},
	} {
		got, err := c.read(c.text)
		if err != nil || math.Abs(got-c.want) > 1e-9*math.Abs(c.want) {
			t.Errorf("%q was read as %v, want %v (%v)", c.text, got, c.want, err)
		}
	}
}

func TestReadsRatesCountsAgesSpans(t *testing.T) {
	rate, err := quantity.ParseRate("110/min")
	if err != nil || math.Abs(rate.Period()-545_454.545) > 0.001 { // 60 s / 110
		t.Errorf("110/min lasts %v (%v)", rate.Period(), err)
	}
	if rate, err = quantity.ParseRate("80 cartons/h"); err != nil || rate.Of != "cartons" || rate.Period() != 45e6 {
		t.Errorf("80 cartons/h was read as %+v (%v)", rate, err)
	}
	for text, want := range map[string]quantity.Count{
		"720 blisters": {720, "blisters"}, "1 carton": {1, "carton"}, "12": {12, ""}, "80 000 end blanks": {80000, "end blanks"},
	} {
		if got, err := quantity.ParseCount(text); err != nil || got != want {
			t.Errorf("%q was read as %+v (%v)", text, got, err)
		}
	}
	for text, want := range map[string]quantity.Age{
		"1500 cycles":    {1500, quantity.Cycles, ""},
		"1 cycle":        {1, quantity.Cycles, ""},
		"1000 cartons":   {1000, quantity.Pieces, "cartons"},
		"20 min running": {1200e6, quantity.Running, ""},
		"2 h calendar":   {7200e6, quantity.Calendar, ""},
		"20 min":         {1200e6, quantity.NoClock, ""},
	} {
		if got, err := quantity.ParseAge(text); err != nil || got != want {
			t.Errorf("%q was read as %+v (%v)", text, got, err)
		}
	}
	for _, text := range []string{"0.45 s to 0.70 s", "0.45 to 0.70 s", "450 ms to 0.7 s"} {
		if low, high, err := quantity.Span(text); err != nil || math.Abs(low-450e3) > 1e-6 || math.Abs(high-700e3) > 1e-6 {
			t.Errorf("%q was read as %v to %v (%v)", text, low, high, err)
		}
	}
}

// TestRefuses has what is refused, with a part of the answer.
func TestRefuses(t *testing.T) {
	count := func(text string) (float64, error) { c, err := quantity.ParseCount(text); return float64(c.N), err }
	rate := func(text string) (float64, error) { r, err := quantity.ParseRate(text); return r.Number, err }
	age := func(text string) (float64, error) { a, err := quantity.ParseAge(text); return a.Value, err }
	span := func(text string) (float64, error) { low, _, err := quantity.Span(text); return low, err }
	whole := func(text string) (float64, error) { n, err := quantity.Whole(text); return float64(n), err }
	for _, c := range []struct {
		read func(string) (float64, error)
		text string
		want string
	}{
		{quantity.Duration, "90", `"90" has no unit; write 90 s, 90 min or 90 h`},
		{quantity.Duration, "", "does not begin with a number"},
		{quantity.Duration, "s", "does not begin with a number"},
		{quantity.Duration, "90 sek", `"sek" is written s here: 90 s`},
		{quantity.Duration, "90 furlongs", "is not a unit of time; write us, ms, s, min, h, day, week or year"},
		{quantity.Duration, "1,5 min", "thousands or decimal comma? write 2000 and 0.9"},
		{quantity.Duration, "2.000,5 s", "is not a unit of time"},
		{quantity.Duration, "nan s", "is not a number that can be used"},
		{quantity.Duration, ".inf", "is not a number that can be used"},
		{quantity.Duration, "-inf s", "is not a number that can be used"},
		{quantity.Duration, "1e400 s", "is too large"},
		{quantity.Duration, "1e20 year", "is too large"},
		{quantity.Duration, "010 s", "begins with a zero"},
		{quantity.Duration, "24 0 s", "is not one number"},
		{quantity.Duration, "1 2 s", "is not one number"},
		{quantity.Duration, "1.2.3 s", "is not one number"},
		{quantity.Length, "132", "write 132 mm, 132 um or 132 m"},
		{quantity.Length, "2 microns", `"microns" is written um here: 2 um`},
		{quantity.Share, "0.8", `"0.8" has no unit; write 0.8 %`},
		{quantity.Share, "0.8 percent", "is not a percentage"},
		{quantity.Speed, "24 m", "is not a speed; write it as 24 m/min or 400 mm/s"},
		{quantity.Speed, "24 kg/min", "is not a unit of speed"},
		{quantity.Number, "5 s", "is a bare number here"},
		{rate, "60", "is not a rate; write it as 60/min"},
		{rate, "60/minute", `"minute" is written min here: 60/min`},
		{rate, "60/mile", "is not a unit of time; write 60/min, 1/s or 3600/h"},
		{rate, "0/min", "a rate is more than 0"},
		{rate, "-5/min", "a rate is more than 0"},
		{count, "2.5 blisters", "is not a whole number"},
		{count, "20 s", "is a unit of time, and pieces are counted here"},
		{count, "20 mm", "is a unit of length, and pieces are counted here"},
		{count, "20 %", "is not a name of pieces"},
		{count, "9e13 blisters", "is too large"},
		{age, "900", "900 has no unit"},
		{age, "5 ml/h", "is not a name of pieces"},
		{span, "0.45 s", "is not a range; write it as 0.45 s to 0.70 s"},
		{span, "0.7 s to 0.4 s", "write the lower end first"},
		{span, "0.4 to 0.7", "has no unit"},
		{whole, "1.5", "is not a whole number"},
		{whole, "010", "begins with a zero"},
	} {
		got, err := c.read(c.text)
		if err == nil || !strings.Contains(strings.ReplaceAll(err.Error(), `"900"`, "900"), c.want) {
			t.Errorf("%q was read as %v with %v, want %q", c.text, got, err, c.want)
		}
	}
}

func TestNamesOfPieces(t *testing.T) {
	for one, many := range map[string]string{
		"carton": "cartons", "blisters": "blisters", "box": "boxes", "glass": "glasses", "pouch": "pouches",
		"battery": "batteries", "tray": "trays", "brush": "brushes", "": "",
	} {
		if got := quantity.Plural(one); got != many {
			t.Errorf("the plural of %s is %s, want %s", one, got, many)
		}
		if !quantity.SameUnit(one, many) || quantity.SameUnit(one, "leaflets") {
			t.Errorf("%s and %s are not compared well", one, many)
		}
	}
}

// TestPatterns holds the patterns of the schema against texts that are read.
func TestPatterns(t *testing.T) {
	for pattern, texts := range map[string][]string{
		quantity.DurationPattern(): {"90 s", "1.5 min", "8h", "a week", "2 000 s"},
		quantity.LengthPattern():   {"132 mm", "250 µm", "8 m"},
		quantity.MassPattern():     {"250 mg"},
		quantity.SpeedPattern():    {"24 m/min"},
		quantity.RatePattern():     {"60/min", "80 cartons/h", "1.25/min"},
		quantity.SharePattern():    {"0.8 %", "50%"},
		quantity.CountPattern():    {"720 blisters", "12", "80 000 end blanks"},
		quantity.AgePattern():      {"1500 cycles", "1000 cartons", "20 min running", "2 h calendar"},
		quantity.SpanPattern():     {"0.45 s to 0.70 s", "0.45 to 0.70 s"},
		quantity.NumberPattern():   {"4711", ".45"},
	} {
		matches := regexp.MustCompile(pattern)
		for _, text := range texts {
			if !matches.MatchString(text) {
				t.Errorf("%s does not match %q", pattern, text)
			}
		}
		for _, text := range []string{"", "fast", "90 sek!", "1,5 min"} {
			if matches.MatchString(text) {
				t.Errorf("%s matches %q", pattern, text)
			}
		}
	}
}

func ExampleDuration() {
	micros, _ := quantity.Duration("1.5 min")
	fmt.Println(micros, quantity.FormatDuration(micros))
	_, err := quantity.Duration("90")
	fmt.Println(err)
	// Output:
	// 9e+07 90 s
	// "90" has no unit; write 90 s, 90 min or 90 h
}
