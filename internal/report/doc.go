// Package report is on its way.
package report
