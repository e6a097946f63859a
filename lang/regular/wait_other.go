//go:build !unix

package regular

// noWait is nothing where no pipe stands in a folder.
const noWait = 0
