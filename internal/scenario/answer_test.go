package scenario_test

import (
	"slices"
	"testing"
)

const twoBranches = `line:
  - {station: blister machine, cycle: 40/min, gives: 4 blisters}
  - {buffer: store, holds: 400 blisters}
  - {station: cartoner 1, from: store, cycle: 60/min, takes: 2 blisters, gives: 1 carton}
  - {station: tamper label 1, cycle: 90/min}
  - {station: cartoner 2, from: store, cycle: 20/min, takes: 2 blisters, gives: 1 carton}
  - {station: tamper label 2, cycle: 30/min}
`

// Several stations are counted together; in which order they are named does
// not matter, which of them are named does.
func TestCountedAfterSeveral(t *testing.T) {
	both := read(t, "answer: {counted after: [tamper label 1, tamper label 2], per: shift}\n"+twoBranches)
	if a := both.Answer; a.Unit != "cartons" || !slices.Equal(a.CountedAfter, []int{2, 4}) {
		t.Errorf("answer %+v", a)
	}
	other := read(t, "answer: {counted after: [tamper label 2, tamper label 1], per: shift}\n"+twoBranches)
	if other.Hash() != both.Hash() {
		t.Error("another order has another hash")
	}
	for _, after := range []string{"tamper label 1", "[tamper label 2]", "[tamper label 1, cartoner 2]", "[cartoner 1, cartoner 2]"} {
		if read(t, "answer: {counted after: "+after+", per: shift}\n"+twoBranches).Hash() == both.Hash() {
			t.Errorf("%s: the same hash as with both labels", after)
		}
	}
}

// One name in brackets is that name.
func TestCountedAfterOneInBrackets(t *testing.T) {
	one := read(t, "answer: {counted after: tamper label 1}\n"+twoBranches)
	if listed := read(t, "answer: {counted after: [tamper label 1]}\n"+twoBranches); listed.Hash() != one.Hash() {
		t.Error("brackets change the hash")
	}
}
