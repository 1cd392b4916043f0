package scenario

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"

	"tuckline/sim"
)

// hashDigits is short enough to be read aloud and long enough never to meet twice.
const hashDigits = 16

// Hash names what is simulated: the line, what is counted, the window and the
// seed, as resolved. Comments, titles, the order of keys, the number of
// replications and the confidence do not change it, so that parts of one study
// have the same hash, and so that a warm-up that was found does not change it. It is
// hexadecimal, 16 digits of SHA-256.
func (s *Scenario) Hash() string {
	run := s.Run
	if run.AutoWarmUp {
		run.WarmUp, run.Measure = 0, s.asked
	}
	run.Replications, run.Confidence, run.HalfWidth, run.AtMost = 0, 0, 0, 0
	text, err := json.Marshal(struct {
		Answer   Answer
		Run      Run
		Line     any
		Stations []Station
		Laws     []string
		// Minor are the limits of minor stops, which records are made for, where they are not the usual one.
		Minor []sim.Micros `json:",omitempty"`
	}{s.Answer, run, s.Line, s.Stations, s.laws, s.KeyFigures.unusualLimits()})
	if err != nil {
		panic(err) // plain data: cannot happen
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])[:hashDigits]
}
