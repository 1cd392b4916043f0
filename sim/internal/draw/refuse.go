package draw

import (
	"fmt"
	"math"
)

// Messages name no value that has a unit: the reader of the scenario shows the
// line as it was written, and the numbers here may be in another unit.

func positive(name string, value float64) error {
	if !(value > 0) || math.IsInf(value, 0) {
		return fmt.Errorf("%s must be a number greater than 0", name)
	}
	return nil
}

func notNegative(name string, value float64) error {
	if !(value >= 0) || math.IsInf(value, 0) {
		return fmt.Errorf("%s must be a number, 0 or more", name)
	}
	return nil
}

func usualCV(law string, cv float64) error {
	return limitedCV(law, cv, largestCV, "20")
}

// limitedCV refuses what the law cannot reach; limit is in the words of the message.
func limitedCV(law string, cv, largest float64, limit string) error {
	if cv >= smallestCV && cv <= largest {
		return nil
	}
	advice := ""
	if cv < smallestCV {
		advice = "; for no spread write the bare value"
	}
	return fmt.Errorf("the cv of a %s law must be from 0.001 to %s; it is %g%s", law, limit, cv, advice)
}
