package repository

import "strings"

// Head is the short name of the commit that is checked out, "" where the folder is in no
// repository that has one.
func Head(folder string) string {
	out, err := git(folder, "rev-parse", "--short=10", "--verify", "--quiet", "HEAD")
	if err != nil {
		return ""
	}
	return strings.TrimSpace(string(out))
}
