package quantity

import (
	"fmt"
	"strings"
)

// Share reads a percentage, such as "0.8 %", as a share: 0.008.
func Share(text string) (float64, error) {
	number, rest, err := split(text)
	switch {
	case err != nil:
		return 0, err
	case rest == "":
		return 0, fmt.Errorf("%s has no unit; write %s %%", quote(text), strings.TrimSpace(text))
	case rest != "%":
		return 0, fmt.Errorf("%s is not a percentage; write it as 0.8 %%", quote(text))
	}
	return number / 100, nil
}

// IsShare says whether a text is meant as a percentage.
func IsShare(text string) bool { return strings.HasSuffix(strings.TrimSpace(text), "%") }

// FormatShare writes a share as a percentage that reads back as the same share.
func FormatShare(share float64) string {
	percent := share * 100
	for digits := 1; digits <= 17; digits++ {
		if short := roundDigits(percent, digits); short/100 == share {
			return FormatNumber(short) + " %"
		}
	}
	return FormatNumber(percent) + " %"
}
