package quantity

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// numberHead matches a number at the beginning of a text: digits, which may be
// in groups of three with spaces ("2 000") or have underscores ("2_000"), a
// decimal point, an exponent.
var (
	numberHead = regexp.MustCompile(`^[+-]?(\d{1,3}( \d{3})+|\d[\d_]*|)(\.\d+)?([eE][+-]?\d+)?`)
	words      = regexp.MustCompile(`^[+-]?\.?(nan|inf|infinity)\b`)
	commaHead  = regexp.MustCompile(`^[+-]?[\d_ ]*\d,`)
)

// ErrComma is the answer to a comma inside a number.
var ErrComma = errors.New("thousands or decimal comma? write 2000 and 0.9")

// spaces turns the spaces that people paste from documents into plain ones.
var spaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ", "\t", " ")

// split takes the number at the beginning of a text; rest is what follows it, trimmed.
func split(text string) (number float64, rest string, err error) {
	clean := strings.TrimSpace(spaces.Replace(text))
	if commaHead.MatchString(clean) {
		return 0, "", fmt.Errorf("%s has a comma: %w", quote(text), ErrComma)
	}
	if words.MatchString(strings.ToLower(clean)) {
		return 0, "", fmt.Errorf("%s is not a number that can be used", quote(text))
	}
	head := numberHead.FindString(clean)
	digits := strings.NewReplacer(" ", "", "_", "").Replace(head)
	number, err = strconv.ParseFloat(digits, 64)
	if digits == "" || (err != nil && !errors.Is(err, strconv.ErrRange)) {
		return 0, "", fmt.Errorf("%s does not begin with a number", quote(text))
	}
	if math.IsInf(number, 0) {
		return 0, "", fmt.Errorf("%s is too large", quote(text))
	}
	rest = strings.TrimSpace(clean[len(head):])
	if rest != "" && (rest[0] >= '0' && rest[0] <= '9' || rest[0] == '.' || rest[0] == '_') {
		return 0, "", fmt.Errorf("%s is not one number; digits are written together, as 2000, or in groups of three, as 2 000", quote(text))
	}
	return number, rest, leadingZero(text, digits)
}

// leadingZero refuses 010, which some readers take for 8 and others for 10.
func leadingZero(text, digits string) error {
	digits = strings.TrimLeft(digits, "+-")
	if len(digits) > 1 && digits[0] == '0' && digits[1] >= '0' && digits[1] <= '9' {
		return fmt.Errorf("%s begins with a zero; write it without", quote(text))
	}
	return nil
}

// Number reads a bare number.
func Number(text string) (float64, error) {
	number, rest, err := split(text)
	if err == nil && rest != "" {
		err = fmt.Errorf("%s is a bare number here; leave out %s", quote(text), quote(rest))
	}
	return number, err
}

// FormatNumber writes a number in the shortest way that reads back as the same.
func FormatNumber(number float64) string {
	return strconv.FormatFloat(number, 'f', -1, 64)
}

// Whole reads a bare number of things, without fraction.
func Whole(text string) (int64, error) {
	number, err := Number(text)
	if err != nil {
		return 0, err
	}
	return whole(text, number)
}

// LargestCount is the largest number of pieces that can be written.
const LargestCount = 1_000_000_000_000

func whole(text string, number float64) (int64, error) {
	if number != math.Trunc(number) {
		return 0, fmt.Errorf("%s is not a whole number", quote(text))
	}
	if math.Abs(number) > LargestCount {
		return 0, fmt.Errorf("%s is too large; the most is %d", quote(text), int64(LargestCount))
	}
	return int64(number), nil
}

func quote(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "…"
	}
	return strconv.Quote(text)
}

// roundDigits rounds to a number of significant digits.
func roundDigits(number float64, digits int) float64 {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(number, 'g', digits, 64), 64)
	return rounded
}

// HasUnit says whether something follows the number of a text.
func HasUnit(text string) bool {
	_, rest, err := split(text)
	return err != nil || rest != ""
}
