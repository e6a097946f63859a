package shell

import (
	"fmt"
	"strings"
)

// bashScript makes the script for bash, from 3.2 on: it uses neither the helpers of
// the package bash-completion nor mapfile. Bash parts --format=json at the sign.
func bashScript(list []Place) string {
	var flags, offers strings.Builder
	for _, p := range list {
		for _, f := range p.Flags {
			if f.Takes {
				fmt.Fprintf(&flags, "    %s) %sreturn ;;\n", quoted(p.Path+" "+f.Word), bashValues(f.Values))
			}
		}
		words := wordsOf(p.Commands, func(o Offer) string { return o.Word })
		own := wordsOf(p.Flags, func(f Flag) string { return f.Word })
		fmt.Fprintf(&offers, "    %s)\n      if [[ $cur == -* ]]; then _maltwright_words %s; return; fi\n", quoted(p.Path), quoted(own))
		if words != "" {
			fmt.Fprintf(&offers, "      _maltwright_words %s\n", quoted(words))
		}
		fmt.Fprintf(&offers, "      %s;;\n", bashValues(p.Values))
	}
	moves := steps(list, func(from, word, to string) string {
		return fmt.Sprintf("      %s) at=%s ;;\n", quoted(from+" "+word), quoted(to))
	})
	return fmt.Sprintf(bashFrame, moves, flags.String(), offers.String())
}

func bashValues(v Values) string {
	out := ""
	if v.Words != nil {
		out += "_maltwright_words " + quoted(strings.Join(v.Words, " ")) + "; "
	}
	if v.Files {
		out += "_maltwright_names -f -X '!*.malt'; _maltwright_names -d; "
	} else if v.Folders {
		out += "_maltwright_names -d; "
	}
	return out
}

const bashFrame = `# bash completion for maltwright

_maltwright_words() {
  local word
  while IFS= read -r word; do COMPREPLY+=("$word"); done < <(compgen -W "$1" -- "$cur")
}

_maltwright_names() {
  local name
  compopt -o filenames 2>/dev/null
  while IFS= read -r name; do COMPREPLY+=("$name"); done < <(compgen "$@" -- "$cur")
}

_maltwright() {
  local cur="${COMP_WORDS[COMP_CWORD]}" prev="${COMP_WORDS[COMP_CWORD-1]}" at="" i
  COMPREPLY=()
  if [[ $cur == "=" ]]; then
    cur=""
  elif [[ $prev == "=" ]]; then
    prev="${COMP_WORDS[COMP_CWORD-2]}"
  fi
  for ((i = 1; i < COMP_CWORD; i++)); do
    case "$at ${COMP_WORDS[i]}" in
%s    esac
  done
  case "$at $prev" in
%s  esac
  case "$at" in
%s  esac
}

complete -F _maltwright maltwright
`
