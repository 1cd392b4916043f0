// Package estimate has what is said about a figure that was measured in several
// replications: intervals, differences, quantiles, doubts. Everything is a pure
// function of its numbers; whatever is drawn at random (bootstrap) starts from a
// fixed seed, so that the same numbers always give the same bytes.
//
// Rules that decide when a study has enough (Precision, Selection) are state
// machines: they say what to run next and judge what they are handed.
//
// Samples are finite numbers in the order of replication. A confidence lies
// between 0 and 1, both excluded, such as 0.95; the reader of scenarios refuses
// anything else. Results never hold NaN or Inf, which JSON cannot carry.
package estimate
