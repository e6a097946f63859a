package shell

import (
	"fmt"
	"strings"
)

// fishScript makes the script for fish.
func fishScript(list []Place) string {
	var b strings.Builder
	for _, p := range list {
		at := fmt.Sprintf("complete -c maltwright -n %s", quoted("__maltwright_at "+strings.TrimSpace(p.Path)))
		for _, c := range p.Commands {
			fmt.Fprintf(&b, "%s -a %s -d %s\n", at, c.Word, quoted(c.Help))
		}
		for _, f := range p.Flags {
			takes := ""
			if f.Takes {
				takes = " -x" + fishValues(f.Values)
			}
			fmt.Fprintf(&b, "%s -l %s%s -d %s\n", at, strings.TrimPrefix(f.Word, "--"), takes, quoted(f.Help))
		}
		if offers := fishValues(p.Values); offers != "" {
			fmt.Fprintf(&b, "%s%s\n", at, offers)
		}
	}
	moves := steps(list, func(from, word, to string) string {
		return fmt.Sprintf("      case %s\n        set at %s\n", quoted(from+" "+word), quoted(to))
	})
	return fmt.Sprintf(fishFrame, moves, b.String())
}

func fishValues(v Values) string {
	switch {
	case v.Words != nil:
		return " -a " + quoted(strings.Join(v.Words, " "))
	case v.Files:
		return " -a '(__maltwright_processes)'"
	case v.Folders:
		return " -a '(__fish_complete_directories)'"
	}
	return ""
}

const fishFrame = `# fish completion for maltwright

function __maltwright_at
  set -l words (commandline -opc)
  set -e words[1]
  set -l at ''
  for word in $words
    switch "$at $word"
%s    end
  end
  test "$at" = "$argv"
end

function __maltwright_processes
  __fish_complete_suffix .malt | string match -er '(?:/|\.malt)(?:\t|$)'
end

complete -c maltwright -f
%s`
