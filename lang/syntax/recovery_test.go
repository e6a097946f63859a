package syntax

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
	"maltwright/lang/source/golden"
)

// Each archive holds texts and what is found in them: the finding, then the words
// it is about.
func TestFindings(t *testing.T) {
	covered := map[string]bool{}
	for _, path := range glob(t, "testdata/*.txtar") {
		name := strings.TrimSuffix(filepath.Base(path), ".txtar")
		t.Run(name, func(t *testing.T) {
			golden.Archive(t, path, func(t *testing.T, c golden.Case) string {
				f := source.New("main.malt", []byte(unescapes.Replace(c.Files["main.malt"])))
				tree, found := Parse(f)
				checkTree(t, tree)
				for _, f := range found {
					covered[f.Rule] = covered[f.Rule] || c.Name == "fires"
				}
				return golden.Findings(found)
			})
		})
	}
	for _, r := range Rules() {
		assert.True(t, covered[r.Name] || needsLongText[r.Name], "no archive has a case named fires in which %s fires", r.Name)
	}
}

// unescapes lets an archive hold what no text file should.
var unescapes = strings.NewReplacer("<B0>", "\xb0", "<FF>", "\xff", "<FE>", "\xfe", "<00>", "\x00", "<202E>", "\u202e", "<ESC>", "\x1b", "<BOM>", "\ufeff", "<200D>", "\u200d")

var needsLongText = map[string]bool{"file-too-large": true, "nested-too-deep": true, "too-many-statements": true}

func TestEachRulesExamplesShowIt(t *testing.T) {
	for _, r := range Rules() {
		assert.NotEmpty(t, r.Title)
		assert.NotEmpty(t, r.Why, r.Name)
		assert.NotEmpty(t, r.Do, r.Name)
		if r.Bad == "" {
			assert.True(t, needsLongText[r.Name], "%s has no example", r.Name)
			continue
		}
		_, bad := parse(r.Bad)
		require.Len(t, bad, 1, r.Name)
		assert.True(t, strings.HasPrefix(bad[0], r.Name+":"), "%s: %s", r.Name, bad[0])
		_, good := parse(r.Good)
		assert.Empty(t, good, r.Name)
	}
}

func TestBrokenHeaderCostsThatStatementAlone(t *testing.T) {
	tree, found := parse("steep ) in \"tub\" {\n  soak 7 h\n  rest at least\n  soak 5 h\n}\nkiln { dry }")
	assert.Equal(t, []string{"stray-character: )", "value-missing: at least"}, found)
	steep, kiln := tree.Top.Statements[0], tree.Top.Statements[1]
	assert.True(t, steep.Broken)
	require.Len(t, steep.Body.Statements, 3)
	assert.False(t, steep.Body.Statements[0].Broken)
	assert.True(t, steep.Body.Statements[1].Broken)
	assert.Equal(t, "5", steep.Body.Statements[2].Terms[0].(Amount).Low.Parts[0].Number.Text)
	assert.False(t, kiln.Broken)
}

func TestBlockBehindALineThatBeginsWithNoWordIsItsOwn(t *testing.T) {
	tree, _ := parse("water 9 °C\n12 { soak }")
	require.Len(t, tree.Top.Statements, 2)
	assert.Nil(t, tree.Top.Statements[0].Body)
	assert.Len(t, tree.Top.Statements[1].Body.Statements, 1)
}

func TestLimits(t *testing.T) {
	deep := strings.Repeat("a {", MaxNesting) + strings.Repeat("}", MaxNesting)
	_, found := parse(deep)
	assert.Empty(t, found, "as deep as may be")
	_, found = parse("a {" + deep + "}")
	assert.Equal(t, []string{"nested-too-deep: {"}, found)

	many := strings.Repeat("a\n", MaxStatements)
	_, found = parse(many)
	assert.Empty(t, found, "as many as may be")
	tree, found := parse(many + "b\nc\n")
	assert.Equal(t, []string{"too-many-statements: b"}, found)
	assert.Len(t, tree.Top.Statements, MaxStatements)

	_, found = parse("a" + strings.Repeat(" ", source.MaxBytes-1))
	assert.Empty(t, found, "as large as may be")
	tree, found = parse("a" + strings.Repeat(" ", source.MaxBytes))
	assert.Equal(t, []string{"file-too-large: a"}, trimmed(found))
	assert.Empty(t, tree.Top.Statements)

	_, found = parse(strings.Repeat("a ", maxTokens))
	assert.Empty(t, found, "as many words as may be")
	tree, found = parse(strings.Repeat("a\n;", maxTokens/3) + "a b c d")
	assert.Equal(t, []string{"too-many-statements: a"}, found)
	assert.Empty(t, tree.Top.Statements)
}

func trimmed(found []string) []string {
	for i := range found {
		found[i] = strings.TrimRight(found[i], " ")
	}
	return found
}

func TestFindingsAreNoMoreThanAnybodyReads(t *testing.T) {
	_, found := parse(strings.Repeat(", x\n", 1000))
	assert.LessOrEqual(t, len(found), maxFindings+1)
}

func TestWhatStandsBelowABlockLeftOpenIsReadInItsPlace(t *testing.T) {
	tree, found := parse(`process "Loft" {
  steep {
    soak 7 h
  # the bed
  germinate {
    hold bed
  }
  kiln {
    repeat {
      dry
  }
}
site "Loft" { }
`)
	assert.Equal(t, []string{"unclosed-block: {", "unclosed-block: {"}, found)
	require.Len(t, tree.Top.Statements, 2)
	var verbs []string
	for _, s := range tree.Top.Statements[0].Body.Statements {
		verbs = append(verbs, s.Verb.Text)
	}
	assert.Equal(t, []string{"steep", "germinate", "kiln"}, verbs)
	assert.Equal(t, "# the bed", tree.Top.Statements[0].Body.Statements[0].Body.Tail[0].Text)
}

func TestABraceBehindAByteOrderMarkIsFoundAndNothingFails(t *testing.T) {
	for _, text := range []string{"\ufeff{\n a\n}\n", "\ufeff{ a", "\ufeff  {\n a\n}", "{\n a\n}\n"} {
		_, found := Parse(source.New("x", []byte(text)))
		require.NotEmpty(t, found, "%q", text)
		for _, f := range found {
			assert.Contains(t, []string{strayBrace.Name, unclosedBlock.Name}, f.Rule, "%q", text)
			assert.Equal(t, "{", f.Place.Text(), "%q", text)
		}
	}
}
