package main

import (
	"errors"
	"fmt"

	"maltwright/cmd/words"
)

// severalOn is why none of the batches under way in a folder is meant: there are several.
type severalOn struct{ error }

// underwayOrProcess finds, on behalf of a command, the one batch under way in the working folder, or else its one
// process. The name of the batch is "" where it is a process.
func (w World) underwayOrProcess(command, batch, root string) (file, name string, err error) {
	on, err := w.underway(command, batch, root, w.now())
	if err == nil {
		w.aside(fmt.Sprintf("%s of %s, in which batch %s is under way", command, words.Safe(on.in.name), words.Safe(on.name)))
		return on.in.name, on.name, nil
	}
	var why failure
	if batch != "" || !errors.As(err, &why) || why.code != ExitUsage || errors.As(why.err, new(severalOn)) {
		return "", "", err
	}
	file, err = w.theProcess(command)
	return file, "", err
}
