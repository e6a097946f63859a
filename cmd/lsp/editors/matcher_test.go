package editors

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pattern is one of a problem matcher: a regular expression, and the brackets that hold what.
type pattern struct {
	Regexp                            string
	File, Line, Column, Message, Code int
}

type matcher struct {
	Owner, Severity string
	Pattern         json.RawMessage // one, or a list of one
}

// severities are those of the lines, and what a matcher calls them.
var severities = map[string][]string{"danger": {"error"}, "fault": {"error"}, "caution": {"warning"}, "note": {"info", "notice"}}

func TestThePatternsReadEveryLineOfCheck(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "docs", "editors", "problem-matcher.json"))
	require.NoError(t, err)
	var log struct{ ProblemMatcher []matcher }
	require.NoError(t, json.Unmarshal(text, &log))
	var tasks struct {
		Tasks []struct {
			Command        string
			Args           []string
			ProblemMatcher []matcher
		}
	}
	require.NoError(t, json.Unmarshal([]byte(fenced(t, "commits.md", "json")[0]), &tasks))
	require.Len(t, tasks.Tasks, 1)
	task := tasks.Tasks[0]
	require.Equal(t, "maltwright", task.Command)

	check := exec.Command(filepath.Join(program(t), "maltwright"), task.Args...)
	check.Dir = filepath.Join(root, "examples", "broken")
	out, _ := check.Output() // it found something
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	require.Greater(t, len(lines), 150)
	for name, list := range map[string][]matcher{"the log": log.ProblemMatcher, "the task": task.ProblemMatcher} {
		seen := map[string]int{}
		for _, line := range lines {
			for _, grave := range reads(t, list, line) {
				seen[grave]++
			}
		}
		for grave := range severities {
			assert.NotZero(t, seen[grave], "%s: no %s", name, grave)
		}
	}
	placed := fenced(t, "commits.md", "text")[0]
	assert.Len(t, reads(t, log.ProblemMatcher, strings.TrimSpace(placed)), 1, "the line of the page")
}

// severity finds how grave a line is, in another way than by the patterns.
var severity = regexp.MustCompile(`(?:^|: )(danger|fault|caution|note): `)

// reads holds a line against the matchers: one of them reads it, or none where it has no place. It gives how grave the finding is.
func reads(t *testing.T, list []matcher, line string) (graves []string) {
	t.Helper()
	said := severity.FindStringSubmatchIndex(line)
	require.NotNil(t, said, line)
	grave, where := line[said[2]:said[3]], line[:said[0]]
	for _, m := range list {
		p := patternOf(t, m)
		groups := regexp.MustCompile(p.Regexp).FindStringSubmatch(line)
		if groups == nil {
			continue
		}
		graves = append(graves, grave)
		assert.Contains(t, severities[grave], m.Severity, line)
		assert.Equal(t, where, groups[p.File]+":"+groups[p.Line]+":"+groups[p.Column], line)
		for _, n := range []int{p.Line, p.Column} {
			_, err := strconv.Atoi(groups[n])
			assert.NoError(t, err, line)
		}
		told := strings.TrimPrefix(groups[p.Message], "danger: ") + " [" + groups[p.Code] + "]"
		assert.True(t, strings.HasSuffix(line, grave+": "+told), line)
		if grave == "danger" {
			assert.True(t, strings.HasPrefix(groups[p.Message], "danger: "), "a danger says so in words: %s", line)
		}
	}
	if where == "" {
		assert.Empty(t, graves, line)
	} else {
		assert.Len(t, graves, 1, line)
	}
	return graves
}

func patternOf(t *testing.T, m matcher) (p pattern) {
	t.Helper()
	var list []pattern
	if json.Unmarshal(m.Pattern, &list) == nil {
		require.Len(t, list, 1)
		return list[0]
	}
	require.NoError(t, json.Unmarshal(m.Pattern, &p))
	return p
}
