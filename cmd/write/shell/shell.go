// Package shell writes the scripts that complete a command line.
package shell

import (
	"strings"
)

// Scripts makes the script of each shell.
var Scripts = map[string]func([]Place) string{"bash": bashScript, "zsh": zshScript, "fish": fishScript}

// Place is where one may stand on the command line: behind a command, with what may
// follow. It is read off kong's model, so that no command is forgotten.
type Place struct {
	Path     string // "" at the start, "reckon target" behind these two words
	Commands []Offer
	Flags    []Flag
	Values   Values // of the arguments
}

// Offer is a word with what it means.
type Offer struct{ Word, Help string }

// Flag is a flag with its values.
type Flag struct {
	Offer
	Takes  bool // a value
	Values Values
}

// Values are what may stand for a value: some of the words, a process file in any
// folder, or a folder.
type Values struct {
	Words          []string
	Files, Folders bool
}

// quoted writes a text as one word of any of the shells.
func quoted(text string) string {
	return "'" + strings.NewReplacer("\\", "", "'", "’").Replace(text) + "'"
}

func wordsOf[T any](list []T, word func(T) string) string {
	words := make([]string, len(list))
	for i, o := range list {
		words[i] = word(o)
	}
	return strings.Join(words, " ")
}

// steps writes one line of a shell's case for each place but the first: where the
// word behind one place leads to the next.
func steps(list []Place, line func(from, word, to string) string) string {
	var b strings.Builder
	for _, p := range list {
		for _, c := range p.Commands {
			b.WriteString(line(p.Path, c.Word, strings.TrimSpace(p.Path+" "+c.Word)))
		}
	}
	return b.String()
}
