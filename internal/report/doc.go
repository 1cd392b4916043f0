// Package report turns finished results into what people read: one HTML file
// that needs nothing else, a summary for the terminal, results.json and
// replications.csv. It computes nothing new.
//
// All sentences are in words/en.txt, by name; the layout of the page is in
// assets/*.gohtml, its look in assets/style.css. Charts are options, pure data
// (option.go), which assets/report.js binds to the colours of the page and
// draws with the engine of chartkit. Names come from somebody else's file:
// they reach the page through html/template and encoding/json only.
package report
