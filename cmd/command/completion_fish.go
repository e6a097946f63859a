package command

import (
	"fmt"
	"strings"
)

// fishScript makes the script for fish.
func fishScript(list []place) string {
	var b strings.Builder
	for _, p := range list {
		at := fmt.Sprintf("complete -c maltwright -n %s", quoteShell("__maltwright_at "+strings.TrimSpace(p.path)))
		for _, c := range p.commands {
			fmt.Fprintf(&b, "%s -a %s -d %s\n", at, c.word, quoteShell(c.help))
		}
		for _, f := range p.flags {
			takes := ""
			if f.takes {
				takes = " -x" + fishValues(f.values)
			}
			fmt.Fprintf(&b, "%s -l %s%s -d %s\n", at, strings.TrimPrefix(f.word, "--"), takes, quoteShell(f.help))
		}
		if offers := fishValues(p.values); offers != "" {
			fmt.Fprintf(&b, "%s%s\n", at, offers)
		}
	}
	moves := steps(list, func(from, word, to string) string {
		return fmt.Sprintf("      case %s\n        set at %s\n", quoteShell(from+" "+word), quoteShell(to))
	})
	return fmt.Sprintf(fishFrame, moves, b.String())
}

func fishValues(v values) string {
	switch {
	case v.words != nil:
		return " -a " + quoteShell(strings.Join(v.words, " "))
	case v.files:
		return " -a '(__maltwright_processes)'"
	case v.folders:
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
