package keyfigure

import (
	"math"
	"testing"
)

// Beale's programme (Naval Research Logistics Quarterly 2 (1955); from memory) sends a simplex
// method that takes the steepest unknown round in circles. Its greatest value is 1/20, at
// x = (1/25, 0, 1, 0).
func TestSimplexEndsOnBealesProgramme(t *testing.T) {
	goal := []float64{0.75, -150, 0.02, -6, 0, 0, 0}
	rows := [][]float64{
		{0.25, -60, -0.04, 9, 1, 0, 0},
		{0.5, -90, -0.02, 3, 0, 1, 0},
		{0, 0, 1, 0, 0, 0, 1},
	}
	if got := most(goal, rows, []float64{0, 0, 1}, []int{4, 5, 6}); math.Abs(got-0.05) > 1e-9 {
		t.Errorf("%v, published 0.05", got)
	}
}

// By hand: x1 + x2 with x1 = x2 and x1 ≤ 3, x2 ≤ 2 is 4.
func TestSimplexWithABalance(t *testing.T) {
	rows := [][]float64{{1, -1, 0, 0}, {1, 0, 1, 0}, {0, 1, 0, 1}}
	if got := most([]float64{1, 1, 0, 0}, rows, []float64{0, 3, 2}, []int{-1, 2, 3}); got != 4 {
		t.Errorf("%v, by hand 4", got)
	}
}
