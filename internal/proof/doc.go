// Package proof holds the program against everything that is exactly known: queues, serial lines,
// repairs, merges and splits whose long-run figures follow from a formula or from a chain
// of states that can be solved. The values stand in the folder cases, each with its source.
//
// A case that is a line is simulated, and its exact value must lie in the 99 % interval of our
// figure; Prove says by which rules. A case that is a formula or a statistic calls the function
// of the program that computes it, and must agree to the tolerance of the value.
//
// What it shows is that the arithmetic of the program is right for these models. It does not
// show that any of them is a model of somebody's line.
package proof
