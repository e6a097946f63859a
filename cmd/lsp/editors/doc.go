// Package editors is for tests only: real editors drive the server, set up word for word as
// docs/editors says; what it says of hooks before a commit and of reading the lines of check
// is tried too. Where a program is not there its tests skip, and say so.
package editors
