//go:build race

package follow

// raced tells whether the race detector is on.
const raced = true
