// Package outside holds the models of sim against what others have measured,
// printed or practised. It has no code of its own, only tests.
//
// # How it works
//
// A row of the table (row_test.go) is one figure of a source: what it is, under
// which conditions, what the source says, what is accepted of the model, and a
// function that asks the models for the same figure. Each topic has its file of
// rows. The test judges every row and keeps the whole table in docs/model.md, so
// that the document cannot say other than what the models give.
//
// A row that the model misses stays in the table: it says why, and holds the
// figure that was measured, so that a change in either direction is noticed.
//
// A source is named by its key in docs/sources.bib. In the comments of the code a
// key stands in square brackets and is told from a link by its letters: a key
// begins with a small letter and is made of small letters, digits and hyphens,
// while a link begins with a capital or has a point in it.
package outside
