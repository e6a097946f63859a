package words

import "strings"

// TypedName is the name of a file as it is typed at a command line.
func TypedName(name string) string {
	if strings.ContainsAny(name, " \t'\"$&;()<>|*?") {
		return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
	}
	return name
}
