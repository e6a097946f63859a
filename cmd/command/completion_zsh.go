package command

import (
	"fmt"
	"strings"
)

// zshScript makes the script for zsh. It serves both ways: put on the path of
// functions, where zsh calls the file as the function, and sourced.
func zshScript(list []place) string {
	var flags, offers strings.Builder
	for _, p := range list {
		for _, f := range p.flags {
			if f.takes {
				fmt.Fprintf(&flags, "    %s) %sreturn ;;\n", quoteShell(p.path+" "+f.word), zshValues(f.values))
			}
		}
		fmt.Fprintf(&offers, "    %s)\n      if [[ $PREFIX == -* ]]; then\n        offers=(%s)\n        _describe flag offers; return\n      fi\n",
			quoteShell(p.path), wordsOf(p.flags, func(f flagOffer) string { return zshOffer(f.offer) }))
		if p.commands != nil {
			fmt.Fprintf(&offers, "      offers=(%s)\n      _describe command offers\n", wordsOf(p.commands, zshOffer))
		}
		fmt.Fprintf(&offers, "      %s;;\n", zshValues(p.values))
	}
	moves := steps(list, func(from, word, to string) string {
		return fmt.Sprintf("      %s) at=%s ;;\n", quoteShell(from+" "+word), quoteShell(to))
	})
	return fmt.Sprintf(zshFrame, moves, flags.String(), offers.String())
}

func zshOffer(o offer) string {
	return quoteShell(o.word + ":" + strings.ReplaceAll(o.help, ":", ","))
}

func zshValues(v values) string {
	out := ""
	if v.words != nil {
		out += "compadd -- " + strings.Join(v.words, " ") + "; "
	}
	if v.files {
		out += "_files -g '*.malt'; "
	} else if v.folders {
		out += "_files -/; "
	}
	return out
}

const zshFrame = `#compdef maltwright

_maltwright() {
  local at="" prev="${words[CURRENT-1]}" i
  local -a offers
  if [[ $PREFIX == --*=* ]]; then
    prev="${PREFIX%%%%=*}"
    compset -P '*='
  fi
  for ((i = 2; i < CURRENT; i++)); do
    case "$at ${words[i]}" in
%s    esac
  done
  case "$at $prev" in
%s  esac
  case "$at" in
%s  esac
}

if [[ ${funcstack[1]} == _maltwright ]]; then
  _maltwright "$@"
else
  compdef _maltwright maltwright
fi
`
