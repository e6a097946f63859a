package layout

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// sameSayings tells whether two files say the same: the same statements in the same order,
// with the same clauses and values, however they are laid out or spelt. Comments do
// not count.
func sameSayings(a, b *syntax.Tree) bool {
	return slices.Equal(sayings(&a.Top, vocabulary.File, ""), sayings(&b.Top, vocabulary.File, ""))
}

// sayings lists what a block says, a line a statement.
func sayings(b *syntax.Block, in vocabulary.Block, path string) []string {
	var out []string
	for i, s := range b.Statements {
		at := fmt.Sprintf("%s/%d", path, i)
		out = append(out, at+" "+header(s, in))
		if s.Body != nil {
			out = append(out, at+" {")
			out = append(out, sayings(s.Body, vocabulary.Opens(in, s.Verb.Text), at)...)
		}
	}
	return out
}

// allOwners lists every comment with what it belongs to, for those who must show that
// none has changed hands.
func allOwners(t *syntax.Tree) []string { return owners(&t.Top, "") }

func owners(b *syntax.Block, path string) []string {
	var out []string
	add := func(role string, c *syntax.Comment) {
		if c != nil {
			out = append(out, role+" "+strings.TrimSpace(strings.TrimLeft(comment(c), "#")))
		}
	}
	for i, s := range b.Statements {
		at := fmt.Sprintf("%s/%d", path, i)
		for k := range s.Lead {
			add(at+" above", &s.Lead[k])
		}
		add(at+" behind", s.Trail)
		if s.Body != nil {
			out = append(out, owners(s.Body, at)...)
			add(at+" close", s.Body.Close)
		}
	}
	for k := range b.Tail {
		add(path+" end", &b.Tail[k])
	}
	return out
}
