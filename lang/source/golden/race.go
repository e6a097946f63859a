//go:build race

package golden

// Raced tells whether the race detector is on, which makes sums ten times as long.
const Raced = true
