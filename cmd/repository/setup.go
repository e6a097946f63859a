package repository

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// Top is the folder at the top of the repository that a folder stands in.
func Top(folder string) (string, error) {
	top, err := git(folder, "rev-parse", "--show-toplevel")
	if err != nil {
		return "", fmt.Errorf("cannot set up: %v", meaning(err, "this folder is in no git repository with files"))
	}
	return strings.TrimRight(string(top), "\r\n"), nil
}

// Set writes a setting into the configuration of the repository, and tells whether it had
// to.
func Set(folder string, s Setting) (changed bool, err error) {
	now, _ := git(folder, "config", "--local", "--get", s.Key) // no value is no error
	if strings.TrimRight(string(now), "\r\n") == s.Value {
		return false, nil
	}
	if _, err := git(folder, "config", "--local", s.Key, s.Value); err != nil {
		return false, fmt.Errorf("git config %s: %v", s.Key, meaning(err, notSet(folder)))
	}
	return true, nil
}

// notSet says why the configuration was not written. A git that was killed leaves its lock
// behind, which holds up every later one; whether it is left behind only people can tell.
func notSet(folder string) string {
	path, err := git(folder, "rev-parse", "--git-path", "config.lock")
	if err != nil {
		return "it could not be set"
	}
	lock := filepath.FromSlash(strings.TrimRight(string(path), "\r\n"))
	if !filepath.IsAbs(lock) {
		lock = filepath.Join(folder, lock)
	}
	if _, err := os.Lstat(lock); err != nil {
		return "it could not be set"
	}
	return fmt.Sprintf("it could not be set, since another git is writing the configuration or was killed while it did; if none is running, take away %s and try again", lock)
}
