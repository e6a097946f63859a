package syntax

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// owners writes each comment with what it belongs to.
func owners(of string, b *Block) (list []string) {
	for _, s := range b.Statements {
		name := s.Verb.Text
		for _, c := range s.Lead {
			list = append(list, fmt.Sprintf("%s above %s", c.Text, name))
		}
		if s.Trail != nil {
			list = append(list, fmt.Sprintf("%s behind %s", s.Trail.Text, name))
		}
		if s.Body != nil {
			list = append(list, owners(name, s.Body)...)
			if s.Body.Close != nil {
				list = append(list, fmt.Sprintf("%s closing %s", s.Body.Close.Text, name))
			}
		}
	}
	for _, c := range b.Tail {
		list = append(list, fmt.Sprintf("%s at the end of %s", c.Text, of))
	}
	return list
}

func TestCommentsBelongToWhatTheyStandBy(t *testing.T) {
	for _, c := range []struct {
		name string
		text []string
		want []string
	}{
		{"same line", []string{"soak 7 h # one"}, []string{"# one behind soak"}},
		{"line above", []string{"# one", "soak 7 h"}, []string{"# one above soak"}},
		{"lines above, with a gap", []string{"# one", "", "# two", "", "soak"}, []string{"# one above soak", "# two above soak"}},
		{"end of the file", []string{"soak", "# one"}, []string{"# one at the end of file"}},
		{"file of comments", []string{"# one", "# two"}, []string{"# one at the end of file", "# two at the end of file"}},
		{"end of a block", []string{"steep {", "soak", "# one", "}"}, []string{"# one at the end of steep"}},
		{"empty block", []string{"steep {", "# one", "}"}, []string{"# one at the end of steep"}},
		{"behind the opening brace", []string{"steep { # one", "soak", "}"}, []string{"# one behind steep"}},
		{"behind the closing brace", []string{"steep {", "soak", "} # one", "# two"}, []string{"# one closing steep", "# two at the end of file"}},
		{"behind both braces", []string{"steep { # one", "} # two"}, []string{"# one behind steep", "# two closing steep"}},
		{"block on one line", []string{"tub { holds 25 l } # one"}, []string{"# one closing tub"}},
		{"block on one line, not closed on it", []string{"tub { holds 25 l # one", "}"}, []string{"# one behind holds"}},
		{"behind the last of several", []string{"soak; rest # one"}, []string{"# one behind rest"}},
		{"behind a semicolon", []string{"soak; # one", "rest"}, []string{"# one behind soak"}},
		{"behind the brace and the next statement", []string{"steep { } rest # one"}, []string{"# one behind rest"}},
		{"between blocks", []string{"a { }", "# one", "b { }"}, []string{"# one above b"}},
		{"brace on a line of its own", []string{"steep # one", "{ # two", "soak # three", "}"},
			[]string{"# one behind steep", "# two above soak", "# three behind soak"}},
		{"before a brace on a line of its own", []string{"steep", "# one", "{", "soak", "}"}, []string{"# one above steep"}},
		{"broken line keeps its comment", []string{"soak 7 h, # one", "rest # two"}, []string{"# one behind soak", "# two behind rest"}},
		{"line that begins with no word", []string{"# one", "9 h # two", "rest"}, []string{"# one above 9 h", "# two behind 9 h"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, end := range []string{"\n", "\r\n", "\r"} {
				tree, _ := parse(strings.Join(c.text, end) + end)
				assert.Equal(t, c.want, owners("file", &tree.Top), "line end %q", end)
			}
		})
	}
}

func TestEmptyLinesAboveAreKept(t *testing.T) {
	tree, _ := parse("a\n\n# one\nb\n\n\nc\nd { }\n\n# end")
	s := tree.Top.Statements
	assert.True(t, s[1].Lead[0].Spaced)
	assert.False(t, s[0].Spaced)
	assert.False(t, s[1].Spaced)
	assert.True(t, s[2].Spaced)
	assert.False(t, s[3].Spaced)
	assert.True(t, tree.Top.Tail[0].Spaced)
}
