package arrows

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	linkTo  = regexp.MustCompile(`\]\(([^)\s]+)\)`)
	heading = regexp.MustCompile(`^#{1,6} +(.*)$`)
)

// Every link of the pages leads to a file that is there, and to a heading of it where it names one.
func TestLinksOfThePagesLeadSomewhere(t *testing.T) {
	root := filepath.Join("..", "..")
	pages := []string{filepath.Join(root, "README.md"), filepath.Join(root, "DEVELOPERS.md")}
	require.NoError(t, filepath.WalkDir(filepath.Join(root, "docs"), func(path string, _ fs.DirEntry, err error) error {
		if filepath.Ext(path) == ".md" {
			pages = append(pages, path)
		}
		return err
	}))
	headings, links := map[string]map[string]bool{}, 0
	for _, page := range pages {
		headings[page] = anchors(t, page)
	}
	for _, page := range pages {
		for _, m := range linkTo.FindAllStringSubmatch(prose(t, page), -1) {
			if strings.Contains(m[1], "://") {
				continue
			}
			links++
			path, anchor, _ := strings.Cut(m[1], "#")
			to := page
			if path != "" {
				to = filepath.Join(filepath.Dir(page), filepath.FromSlash(path))
			}
			if _, err := os.Stat(to); !assert.NoError(t, err, "%s links to %s", page, m[1]) || anchor == "" {
				continue
			}
			assert.True(t, headings[to][anchor], "%s links to %s, and no heading is called so", page, m[1])
		}
	}
	assert.Greater(t, links, 100, "links were read")
}

// prose is a page without its fenced code.
func prose(t *testing.T, page string) string {
	t.Helper()
	text, err := os.ReadFile(page)
	require.NoError(t, err)
	var b strings.Builder
	fenced := false
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "```") {
			fenced = !fenced
		} else if !fenced {
			b.WriteString(line)
		}
	}
	return b.String()
}

// anchors are the headings of a page as links name them: in small letters, without signs, with hyphens for blanks.
func anchors(t *testing.T, page string) map[string]bool {
	t.Helper()
	names := map[string]bool{}
	for line := range strings.Lines(prose(t, page)) {
		m := heading.FindStringSubmatch(strings.TrimSpace(line))
		if m == nil {
			continue
		}
		names[strings.Map(func(r rune) rune {
			switch {
			case r == ' ':
				return '-'
			case unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_':
				return unicode.ToLower(r)
			}
			return -1
		}, m[1])] = true
	}
	return names
}
