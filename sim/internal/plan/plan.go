// Package plan has the compiled line.
package plan

// Plan is the compiled line.
type Plan struct{}
