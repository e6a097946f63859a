// Package anyhouse forecasts houses that nobody has, and asks what must hold of every
// forecast. It has no code of its own, only tests.
//
// # How it works
//
// A house (house_test.go) is drawn at random in the words of the language: its lot,
// site, vessel, floor and kiln, and a process with steeps, floors, boxes and drums,
// withering and kilns still and blown, in mixed units. It is as legal as what a person
// writes and need not be sensible. Beside these stand the files of lang/vocabulary/invent,
// which go to the far ends of the language.
//
// What must hold (sound_test.go) is what balances and time demand: all numbers are
// numbers, time goes on, dry matter is only lost and its accounts close, and a step ends
// within its bounds.
package anyhouse
