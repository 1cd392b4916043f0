package report

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"tuckline/sim"
)

// luminance and contrast follow WCAG 2.2, definitions of relative luminance and contrast ratio.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		v, err := strconv.ParseUint(hex[1+2*i:3+2*i], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(v) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	la, lb := luminance(t, a), luminance(t, b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// variable reads a colour of the style sheet, in its light or its dark theme.
func variable(t *testing.T, name string, theme int) string {
	t.Helper()
	found := regexp.MustCompile(`--`+name+`: (#[0-9a-f]{6});`).FindAllStringSubmatch(asset("style.css"), -1)
	if len(found) == 0 {
		t.Fatalf("the style has no --%s", name)
	}
	return found[min(theme, len(found)-1)][1]
}

func TestTextCanBeReadOnEveryColour(t *testing.T) {
	for theme, name := range []string{"light", "dark"} {
		paper := variable(t, "paper", theme)
		for _, ink := range []string{"ink", "faint", "accent"} {
			if c := contrast(t, variable(t, ink, theme), paper); c < 4.5 {
				t.Errorf("%s: %s on paper has a contrast of %.2f", name, ink, c)
			}
		}
		for _, l := range looks {
			ink, ground := variable(t, "on-state", theme), string([]string{string(l.Light), string(l.Dark)}[theme])
			switch l.State {
			case sim.Running:
				ink = variable(t, "ink", theme)
			case sim.Waiting, sim.OffShift:
				ink, ground = variable(t, "ink", theme), paper
			}
			if c := contrast(t, ink, ground); c < 4.5 {
				t.Errorf("%s: the number on %s has a contrast of %.2f", name, l.Key, c)
			}
		}
		if c := contrast(t, variable(t, "ink", theme), variable(t, "warn", theme)); c < 4.5 {
			t.Errorf("%s: a warning has a contrast of %.2f", name, c)
		}
	}
}

// Okabe and Ito 2008, Color Universal Design.
func TestStatesKeepTheirColours(t *testing.T) {
	want := map[sim.State]string{
		sim.Starved: "#56B4E9", sim.Blocked: "#E69F00", sim.Down: "#D55E00", sim.Waiting: "#D55E00",
		sim.Changeover: "#CC79A7", sim.PlannedStop: "#999999", sim.Running: "#DCE7E4",
	}
	for state, colour := range want {
		if got := lookOf(state); got.State != state || string(got.Light) != colour {
			t.Errorf("%v is %s, want %s", state, got.Light, colour)
		}
	}
	for _, l := range looks {
		if l.Word() != l.State.String() {
			t.Errorf("the report says %q, the model %q", l.Word(), l.State)
		}
	}
}
