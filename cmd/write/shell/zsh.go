package shell

import (
	"fmt"
	"strings"
)

// zshScript makes the script for zsh. It serves both ways: put on the path of
// functions, where zsh calls the file as the function, and sourced.
func zshScript(list []Place) string {
	var flags, offers strings.Builder
	for _, p := range list {
		for _, f := range p.Flags {
			if f.Takes {
				fmt.Fprintf(&flags, "    %s) %sreturn ;;\n", quoted(p.Path+" "+f.Word), zshValues(f.Values))
			}
		}
		fmt.Fprintf(&offers, "    %s)\n      if [[ $PREFIX == -* ]]; then\n        offers=(%s)\n        _describe flag offers; return\n      fi\n",
			quoted(p.Path), wordsOf(p.Flags, func(f Flag) string { return zshOffer(f.Offer) }))
		if p.Commands != nil {
			fmt.Fprintf(&offers, "      offers=(%s)\n      _describe command offers\n", wordsOf(p.Commands, zshOffer))
		}
		fmt.Fprintf(&offers, "      %s;;\n", zshValues(p.Values))
	}
	moves := steps(list, func(from, word, to string) string {
		return fmt.Sprintf("      %s) at=%s ;;\n", quoted(from+" "+word), quoted(to))
	})
	return fmt.Sprintf(zshFrame, moves, flags.String(), offers.String())
}

func zshOffer(o Offer) string {
	return quoted(o.Word + ":" + strings.ReplaceAll(o.Help, ":", ","))
}

func zshValues(v Values) string {
	out := ""
	if v.Words != nil {
		out += "compadd -- " + strings.Join(v.Words, " ") + "; "
	}
	if v.Files {
		out += "_files -g '*.malt'; "
	} else if v.Folders {
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
