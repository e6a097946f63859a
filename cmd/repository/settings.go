// Package repository knows git: how a repository is to show and merge process files, and
// how files of its commits are read.
package repository

// AttributesLine has git treat process files by the settings.
const AttributesLine = "*.malt diff=maltwright merge=maltwright"

// Setting is a line of a repository's configuration.
type Setting struct{ Key, Value string }

// Settings: plain shows the meaning; the heads of stages and definitions stand over
// the pieces of a diff; and where merge cannot read a file git merges its lines.
var Settings = []Setting{
	{"diff.maltwright.textconv", "maltwright plain --"},
	{"diff.maltwright.xfuncname", "^ *((process|steep|repeat|germinate|wither|kiln|grain|site|vessel|floor|limits).*)$"},
	{"merge.maltwright.name", "process files, by meaning"},
	{"merge.maltwright.driver", "maltwright merge --name=%P -- %O %A %B; e=$?; test $e -lt 2 && exit $e; git merge-file -L ours -L base -L theirs -- %A %O %B"},
}

// Hook looks at what is about to be committed. All files of the index are laid out, since those
// that are staged use others; only those that are staged are looked at.
const Hook = `#!/bin/sh
# Looks at the process files as they are about to be committed, not as they lie in
# the folder: they must be tidy, and sound.
set -eu
git diff --cached --quiet --diff-filter=d -- '*.malt' && exit 0
staged=$(mktemp -d)
trap 'rm -rf "$staged"' EXIT
git ls-files -z -- '*.malt' | git checkout-index -z --stdin --prefix="$staged/"
look() { git diff --cached --name-only -z --diff-filter=d -- '*.malt' | (cd "$staged" && xargs -0 "$@"); }
if ! untidy=$(look maltwright tidy --verify --); then
	[ -n "$untidy" ] || exit 1 # it said what is wrong
	echo "not committed, since these are not tidy; type: maltwright tidy . && git add -u" >&2
	echo "$untidy" >&2
	exit 1
fi
look maltwright check --quiet -- || {
	echo "not committed: put right what is told above, git add the files, and commit again" >&2
	exit 1
}
`
