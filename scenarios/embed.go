// Package scenarios has the example scenario files, from which own ones start.
package scenarios

import "embed"

// FS holds the examples, NAME.yaml, and REFERENCE.md, the page of all words.
//
//go:embed *.yaml REFERENCE.md
var FS embed.FS
