package study

import (
	"crypto/sha256"
	"encoding/hex"

	"tuckline/internal/scenario"
)

// hashDigits is short enough to be read aloud and long enough never to meet twice.
const hashDigits = 16

// Hash names a scenario by its text, the values of --set included.
func Hash(s *scenario.Scenario) string {
	sum := sha256.Sum256(s.Source)
	return hex.EncodeToString(sum[:])[:hashDigits]
}
