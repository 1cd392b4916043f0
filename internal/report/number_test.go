package report

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tuckline/internal/result"
)

func plainSpaces(s string) string { return strings.ReplaceAll(s, thin, " ") }

// Two significant digits of the half-width, the mean to the same place; worked by hand.
func TestDigitsFollowTheInterval(t *testing.T) {
	for _, c := range []struct {
		mean, half, scale float64
		want              string
	}{
		{3742.4, 31.2, 1, "3 742 ± 31"},
		{3742.4, 3.12, 1, "3 742.4 ± 3.1"},
		{29640, 243, 1, "29 640 ± 240"},
		{29640, 99.6, 1, "29 640 ± 100"},
		{29640, 9.96, 1, "29 640 ± 10"},
		{0.0826, 0.0071, 100, "8.26 ± 0.71"},
		{0.77196, 0.0609, 100, "77.2 ± 6.1"},
		{-12.04, 25.3, 1, "−12 ± 25"},
		{-0.001, 0.3, 1, "0.00 ± 0.30"},
		{1234567.4, 12345, 1, "1 235 000 ± 12 000"},
		{29640, 0, 1, "29 640 ± 0"},
		{0.5, 0, 100, "50.0 ± 0.0"},
		{0, 0, 1, "0 ± 0"},
		{0.25, 1e-17, 100, "25.0 ± 0.0"},
	} {
		e := result.Estimate{Mean: c.mean, Low: c.mean - c.half, High: c.mean + c.half, N: 40}
		if got := plainSpaces(numberOf(e, c.scale).String()); got != c.want {
			t.Errorf("%v ± %v times %v reads %q, want %q", c.mean, c.half, c.scale, got, c.want)
		}
	}
}

// A table of shares has one precision: the widest interval says which, a tenth where there is none.
func TestSharesOfATableAgree(t *testing.T) {
	for want, shares := range map[int][]result.Estimate{
		-1: {about(1, 0), about(0.8333, 0), about(0.1667, 0)},
		0:  {about(0.8, 0.12), about(0.01, 0.001)},
	} {
		if got := sharesPlace(shares); got != want {
			t.Errorf("%v: the place is %d, want %d", shares, got, want)
		}
	}
	if got := sharesPlace([]result.Estimate{about(0.8, 0.0004)}); got != -1 {
		t.Errorf("a narrow interval: the place is %d", got)
	}
}

func TestAnEstimateOfOneHasNoInterval(t *testing.T) {
	one := result.Estimate{Mean: 512.4, Low: 512.4, High: 512.4, N: 1}
	if got := plainSpaces(numberOf(one, 1).String()); got != "512 (no interval)" {
		t.Errorf("it reads %q", got)
	}
	if got := numberOf(result.Estimate{}, 1).String(); got != "–" {
		t.Errorf("nothing reads %q", got)
	}
}

// A value that is written keeps within half of its last place.
func TestRoundedStaysNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.Float64Range(1e-6, 1e9).Draw(t, "half")
		mean := rapid.Float64Range(-1e9, 1e9).Draw(t, "mean")
		place := placeOf(half, mean)
		if digits := half / math.Pow10(place); digits < 9.4 || digits > 99.6 {
			t.Fatalf("half-width %v is shown to the place %d", half, place)
		}
		text := strings.ReplaceAll(strings.ReplaceAll(rounded(mean, place), thin, ""), "−", "-")
		back := parse(t, text)
		if math.Abs(back-mean) > 0.5000001*math.Pow10(place)+1e-6 {
			t.Fatalf("%v reads %q", mean, text)
		}
	})
}

func TestShares(t *testing.T) {
	for share, want := range map[float64]string{0: "0 %", 0.0004: "less than 0.1 %", 0.0826: "8.3 %", 0.0996: "10 %", 0.7719: "77 %", 1: "100 %"} {
		if got := plainSpaces(percentWords(share)); got != want {
			t.Errorf("%v reads %q, want %q", share, got, want)
		}
	}
}

// A number and its unit stay on one line, in the page and in the terminal.
func TestNumbersStayWithTheirUnits(t *testing.T) {
	for text, want := range map[string]string{
		"0.40 s to 0.60 s, by 50 %.": "0.40" + thin + "s to 0.60" + thin + "s, by 50" + thin + "%.",
		"station 2 makes 3 shifts":   "station 2 makes 3 shifts",
		"line 7 min":                 "line 7" + thin + "min",
	} {
		if got := together(text); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	p := paper{width: 21}
	p.paragraph(together("at most 1 person, 50 % of the time"))
	if got := p.text.String(); got != "at most 1 person,\n50 % of the time\n" {
		t.Errorf("got %q", got)
	}
}
