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

// Hook looks at what is about to be committed.
const Hook = `#!/bin/sh
# Looks at the process files as they are about to be committed, not as they lie in
# the folder: they must be tidy, and sound.
set -eu
git diff --cached --quiet -- '*.malt' && exit 0
[ -n "$(git ls-files -- '*.malt')" ] || exit 0
staged=$(mktemp -d)
trap 'rm -rf "$staged"' EXIT
git ls-files -z -- '*.malt' | git checkout-index -z --stdin --prefix="$staged/"
cd "$staged"
maltwright tidy --verify .
maltwright check --quiet .
`
