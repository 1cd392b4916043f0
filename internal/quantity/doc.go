// Package quantity reads and writes amounts with their units, as people write
// them in scenario files: "90 s", "60/min", "250 um", "0.8 %", "720 blisters".
//
// Errors are whole phrases for the person who wrote the text: what is wrong and
// what would be right. A comma inside a number is never guessed.
package quantity
