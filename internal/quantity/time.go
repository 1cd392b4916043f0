package quantity

import (
	"fmt"
	"strings"
)

// Duration reads a time, such as "90 s", "1.5 min" or "a week", in microseconds.
// A day has 24 h, a year 365 days.
func Duration(text string) (micros float64, err error) {
	if article, rest, found := strings.Cut(strings.TrimSpace(text), " "); found && (article == "a" || article == "an") {
		return duration.parse("1 " + rest)
	}
	return duration.parse(text)
}

// FormatDuration writes microseconds so that they read back as the same.
func FormatDuration(micros float64) string { return duration.format(micros) }

// Rate is how many in a span of time, such as 60 a minute.
type Rate struct {
	Number float64
	// Of is what is counted, as written; empty in "60/min".
	Of string
	// Per is the span in microseconds.
	Per float64
}

// Period is the time of one, in microseconds.
func (r Rate) Period() float64 { return r.Per / r.Number }

// ParseRate reads a rate: "60/min", "80 cartons/h".
func ParseRate(text string) (Rate, error) {
	number, rest, err := split(text)
	if err != nil {
		return Rate{}, err
	}
	of, per, found := strings.Cut(rest, "/")
	factor, known := duration.factor(strings.TrimSpace(per))
	switch {
	case !found:
		return Rate{}, fmt.Errorf("%s is not a rate; write it as 60/min", quote(text))
	case !known && meant[strings.TrimSpace(per)] != "":
		return Rate{}, fmt.Errorf("%s is written %s here: %s/%[2]s", quote(strings.TrimSpace(per)), meant[strings.TrimSpace(per)], FormatNumber(number))
	case !known:
		return Rate{}, fmt.Errorf("%s is not a unit of time; write 60/min, 1/s or 3600/h", quote(strings.TrimSpace(per)))
	case number <= 0:
		return Rate{}, fmt.Errorf("%s: a rate is more than 0", quote(text))
	case number > maxValue || number < 1/maxValue:
		return Rate{}, fmt.Errorf("%s is not a rate that can be used", quote(text))
	}
	return Rate{number, strings.TrimSpace(of), factor}, nil
}

// IsRate says whether a text is meant as a rate.
func IsRate(text string) bool { return strings.Contains(text, "/") }

// Format writes the rate so that it reads back as the same.
func (r Rate) Format() string {
	for _, u := range duration.units {
		if u.factor == r.Per {
			if r.Of == "" {
				return FormatNumber(r.Number) + "/" + u.names[0]
			}
			return FormatNumber(r.Number) + " " + r.Of + "/" + u.names[0]
		}
	}
	return FormatNumber(r.Number/r.Per) + "/us"
}

// Span reads a range of times, such as "0.45 s to 0.70 s" or "0.45 to 0.70 s",
// in microseconds.
func Span(text string) (low, high float64, err error) {
	from, to, found := strings.Cut(text, " to ")
	if !found {
		return 0, 0, fmt.Errorf("%s is not a range; write it as 0.45 s to 0.70 s", quote(text))
	}
	if high, err = Duration(to); err != nil {
		return 0, 0, err
	}
	if number, rest, bad := split(from); bad == nil && rest == "" {
		_, unit, _ := split(to)
		from = FormatNumber(number) + " " + unit
	}
	if low, err = Duration(from); err != nil {
		return 0, 0, err
	}
	if low > high {
		return 0, 0, fmt.Errorf("%s: the first is the larger one; write the lower end first", quote(text))
	}
	return low, high, nil
}
