package main

import (
	"fmt"
	"strings"
	"time"

	"maltwright/cmd/folder"
)

// running is a batch under way, and the file of its record.
type running struct {
	in   input
	name string
}

func (r running) String() string { return fmt.Sprintf("%q in %s", r.name, r.in.name) }

// underway finds, on behalf of a command, the one batch that is under way in the working folder or,
// with its name, the one that is called so.
func (w World) underway(command, name, root string, now time.Time) (running, error) {
	names, err := folder.Beside(w.Folder)
	if err != nil {
		return running{}, exitOf(err)
	}
	var on, over []running
	for _, b := range folder.Batches(names, func(file string) (folder.File, error) {
		in, err := w.file(file, root)
		return in.as(), err
	}) {
		r := running{inputOf(b.File), b.Model.Name}
		switch {
		case name != "" && b.Model.Name == name, name == "" && folder.GoesOn(b.Model, now):
			on = append(on, r)
		case name == "":
			over = append(over, r)
		}
	}
	switch {
	case len(on) == 1:
		return on[0], nil
	case len(on) > 1:
		many := fmt.Sprintf("%d batches are under way here", len(on))
		if name != "" {
			many = fmt.Sprintf("%d records here are called %q", len(on), name)
		}
		if command != "note" {
			return running{}, failure{ExitUsage, severalOn{fmt.Errorf("%s: %s; say which, such as: %s", many, listed(on), commandLine(command, on[0].in.name))}}
		}
		return running{}, usage("%s: %s; say which in front of the reading: maltwright note %s ...", many, listed(on), quotedForShell(on[0].in.name))
	case name != "":
		return running{}, usage("no batch of this folder is called %q", name)
	case len(over) > 0 && command != "note":
		return running{}, usage("no batch is under way in this folder: %s over, or nothing was written of it for 30 days; type: %s", are(listed(over), len(over)), commandLine(command, over[0].in.name))
	case len(over) > 0:
		return running{}, usage("no batch is under way in this folder: %s over, or nothing was written of it for 30 days; name its file in front of the reading", are(listed(over), len(over)))
	}
	return running{}, usage("there is no record of a batch in this folder; begin one: maltwright begin FILE, with the file of its process")
}

func are(what string, n int) string {
	if n == 1 {
		return what + " is"
	}
	return what + " are"
}

func listed(list []running) string {
	var out []string
	for _, r := range list {
		out = append(out, r.String())
	}
	return strings.Join(out, ", ")
}
