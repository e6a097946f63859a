package highlight_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/write/highlight"
	"maltwright/lang/source/golden"
)

const (
	grammarFile = "../../../docs/editors/vscode/syntaxes/malt.tmLanguage.json"
	listFile    = "../../../docs/editors/sublime/malt.tmLanguage" // the same as a property list
)

func TestTheGrammarIsThatOfTheVocabulary(t *testing.T) {
	golden.File(t, grammarFile, string(highlight.TextMate()))
	golden.File(t, listFile, string(highlight.PropertyList()))
}

// modulesPath names a folder of npm with vscode-textmate and vscode-oniguruma.
const modulesPath = "MALTWRIGHT_TEXTMATE"

func needsModules(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("node is not here: the TextMate grammar is NOT TESTED; .ci/run says what it needs")
	}
	if os.Getenv(modulesPath) == "" {
		t.Skip(modulesPath + " names no folder with vscode-textmate and vscode-oniguruma: the TextMate grammar is NOT TESTED; .ci/run installs them")
	}
}

func TestEveryWordHasTheScopeOfWhatItIs(t *testing.T) {
	needsModules(t)
	list := samples(t, 40)
	texts := make([]string, len(list))
	for i, s := range list {
		texts[i] = s.text
	}
	colours := textmateColours(t, grammarFile, texts)
	assert.Equal(t, colours[:10], textmateColours(t, listFile, texts[:10]), "the property list")
	words := 0
	for i, s := range list {
		words += s.compare(t, byBytes(t, s.text, colours[i]))
	}
	assert.Greater(t, words, 30_000)
	t.Logf("%d words of %d texts", words, len(list))
}

// token is a run of a text with one list of scopes; its places are in units of UTF-16.
type token struct {
	start, end int
	scopes     []string
}

func (tok *token) UnmarshalJSON(data []byte) error {
	return json.Unmarshal(data, &[]any{&tok.start, &tok.end, &tok.scopes})
}

func textmateColours(t *testing.T, grammar string, texts []string) [][]token {
	t.Helper()
	in, err := json.Marshal(texts)
	require.NoError(t, err)
	node := exec.Command("node", filepath.Join("testdata", "scopes.js"), grammar)
	node.Env = append(os.Environ(), "NODE_PATH="+os.Getenv(modulesPath))
	node.Stdin = bytes.NewReader(in)
	var told strings.Builder
	node.Stderr = &told
	out, err := node.Output()
	require.NoError(t, err, told.String())
	var list [][]token
	require.NoError(t, json.Unmarshal(out, &list))
	require.Len(t, list, len(texts))
	return list
}

// byBytes gives what each byte is by the scopes of its token.
func byBytes(t *testing.T, text string, tokens []token) []kind {
	t.Helper()
	offsets := make([]int, 0, len(text)+1) // of each unit of UTF-16, in bytes
	for i, r := range text {
		for range utf16.RuneLen(r) {
			offsets = append(offsets, i)
		}
	}
	offsets = append(offsets, len(text))
	kinds := make([]kind, len(text))
	for _, tok := range tokens {
		for i := offsets[tok.start]; i < offsets[tok.end]; i++ {
			kinds[i] = kindOf(t, tok.scopes)
		}
	}
	return kinds
}

// byScope tells what a scope says of a word. Of two that fit the first counts.
var byScope = []struct {
	prefix string
	kind   kind
}{
	{"string.quoted.double", ofText},
	{"comment.line", ofComment},
	{"keyword.control", ofVerb}, {"storage.type", ofVerb}, {"support.type.property-name", ofVerb},
	{"keyword.other.unit", ofUnit},
	{"keyword.other", ofClause},
	{"keyword.operator.comparison", ofBound},
	{"keyword.operator.range", ofRange},
	{"keyword.operator.logical", ofWord},
	{"constant.numeric", ofNumber},
	{"constant.other.date", ofTime}, {"constant.other.time", ofTime},
	{"constant.language", ofWord}, {"variable.language", ofWord}, {"variable.other", ofWord},
	{"punctuation", ofSign},
	{"invalid.illegal", ofStray},
}

func kindOf(t *testing.T, scopes []string) kind {
	t.Helper()
	if len(scopes) == 0 {
		return ""
	}
	for _, scope := range scopes {
		assert.True(t, strings.HasSuffix(scope, ".malt"), scope)
	}
	for _, s := range byScope {
		if strings.HasPrefix(scopes[0], s.prefix) {
			return s.kind
		}
	}
	t.Errorf("no kind for %q", scopes)
	return ""
}
