package quantity

import "strings"

// Thin is the narrow space that parts thousands and stands before a unit; it does not break a
// line. A terminal may not have it: what is written there gets plain spaces instead.
const Thin = "\u202f"

// Grouped parts the thousands of decimal digits as strconv writes them ("-12345.6") by thin
// spaces and gives them a true minus sign; zero has none. It is how the whole program shows
// numbers to people: a comma would be a decimal sign to some of them.
// Source of the spaces: SI Brochure, 9th edition, section 5.4.4; from memory.
func Grouped(digits string) string {
	sign := ""
	if rest, negative := strings.CutPrefix(digits, "-"); negative {
		digits = rest
		if strings.Trim(rest, "0.") != "" {
			sign = "−"
		}
	}
	head, tail := digits, ""
	if dot := strings.IndexByte(digits, '.'); dot >= 0 {
		head, tail = digits[:dot], digits[dot:]
	}
	var b strings.Builder
	for i, d := range head {
		if i > 0 && (len(head)-i)%3 == 0 {
			b.WriteString(Thin)
		}
		b.WriteRune(d)
	}
	return sign + b.String() + tail
}
