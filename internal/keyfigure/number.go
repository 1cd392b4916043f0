package keyfigure

import (
	"math"
	"strconv"
	"strings"

	"tuckline/internal/quantity"
)

// number writes a figure with three significant digits or all digits before
// the point, thousands apart, as people read it.
func number(v float64) string {
	decimals := 3
	switch size := math.Abs(v); {
	case size >= 99.95:
		decimals = 0
	case size >= 9.995:
		decimals = 1
	case size >= 0.9995:
		decimals = 2
	}
	text := fixed(v, decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// fixed writes a figure with a number of decimals and thousands apart.
func fixed(v float64, decimals int) string {
	return quantity.Grouped(strconv.FormatFloat(v, 'f', decimals, 64))
}

// count writes a number of pieces.
func count(n int64) string { return fixed(float64(n), 0) }

// percent writes a share.
func percent(share float64) string { return fixed(100*share, 1) + " %" }
