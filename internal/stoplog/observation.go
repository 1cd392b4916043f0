package stoplog

import (
	"errors"
	"fmt"
	"math"
)

// Observation is one duration or one time between stops of a log.
type Observation struct {
	// Value is above 0.
	Value float64
	// Open says that it had not ended yet: the true value is larger (right censoring),
	// such as the time from the last stop to the end of the log.
	Open bool
	// Above is the threshold under which it would not be in the log (left truncation); 0 for none.
	Above float64
}

// Complete makes observations of values that all ended, logged without threshold.
func Complete(values []float64) []Observation {
	log := make([]Observation, len(values))
	for i, v := range values {
		log[i] = Observation{Value: v}
	}
	return log
}

// check says all that keeps a log from being fitted.
func check(log []Observation) error {
	var wrong []error
	for i, o := range log {
		where := fmt.Sprintf("observation %d", i+1)
		if !(o.Value > 0) || math.IsInf(o.Value, 0) {
			wrong = append(wrong, fmt.Errorf("%s is %g: a duration must be above 0; a stop of no length is an error of the log", where, o.Value))
			continue
		}
		if !(o.Above >= 0) || o.Above > o.Value {
			wrong = append(wrong, fmt.Errorf("%s is %g, below the threshold %g under which nothing is logged: correct one of them", where, o.Value, o.Above))
		}
	}
	if ended(log) == 0 {
		wrong = append(wrong, errors.New("no observation has ended: nothing can be fitted"))
	}
	return errors.Join(wrong...)
}

// ended is the number of observations that are not open.
func ended(log []Observation) int {
	n := 0
	for _, o := range log {
		if !o.Open {
			n++
		}
	}
	return n
}

// different says that at least two of those that ended differ.
func different(log []Observation) bool {
	first := math.NaN()
	for _, o := range log {
		if o.Open {
			continue
		}
		if !math.IsNaN(first) && o.Value != first {
			return true
		}
		first = o.Value
	}
	return false
}

// plain says that all have ended and none has a threshold, so that shorter ways are open.
func plain(log []Observation) bool {
	for _, o := range log {
		if o.Open || o.Above > 0 {
			return false
		}
	}
	return true
}
