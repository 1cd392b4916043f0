// Package chartkit carries the chart engine of the reports: a bundle of the
// kinds of chart in web/entry.js, built from npm packages by go generate and
// embedded compressed.
package chartkit

//go:generate npm --prefix web ci --ignore-scripts
//go:generate node web/build.mjs
