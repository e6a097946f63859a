package lsp

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	featureRow = regexp.MustCompile(`(?m)^\| (.*?) \| (yes|no) \|.*\|$`)
	quotedName = regexp.MustCompile("`([^`]+)`")
)

// features are the methods of the table in docs/lsp.md, and whether they are said to be there. One that is
// written without what stands in front of its slash has that of the one before it in the row.
func features(t *testing.T) map[string]bool {
	t.Helper()
	page, err := os.ReadFile("../../docs/lsp.md")
	require.NoError(t, err)
	list := map[string]bool{}
	for _, row := range featureRow.FindAllStringSubmatch(string(page), -1) {
		front := ""
		for _, m := range quotedName.FindAllStringSubmatch(row[1], -1) {
			name := m[1]
			if at := strings.LastIndex(name, "/"); at >= 0 {
				front = name[:at+1]
			} else {
				name = front + name
			}
			list[name] = row[2] == "yes"
		}
	}
	return list
}

func TestTheTableOfFeaturesIsThatOfTheServer(t *testing.T) {
	told := features(t)
	require.Greater(t, len(told), 60)
	does := map[string]bool{}
	for name := range methods() {
		does[name] = true
	}
	for name := range notifications {
		does[name] = true
	}
	for name := range does {
		assert.True(t, told[name], "docs/lsp.md does not say that %s is there", name)
	}
	ours := []string{"textDocument/publishDiagnostics", "workspace/configuration", "client/registerCapability", "window/logMessage", "window/showMessage", "window/showDocument"} // the server's own
	for name, is := range told {
		if is && !does[name] {
			assert.Contains(t, ours, name, "docs/lsp.md says that %s is there", name)
		}
	}
}

var publishedMethod = regexp.MustCompile(`const method: ['"]([^'"]+)['"]`)

func TestTheTableHasEveryMethodOfTheProtocol(t *testing.T) {
	modules := os.Getenv("MALTWRIGHT_PROTOCOL")
	if modules == "" {
		t.Skip("MALTWRIGHT_PROTOCOL does not say in which node_modules the package vscode-languageserver-protocol is")
	}
	files, err := filepath.Glob(filepath.Join(modules, "vscode-languageserver-protocol/lib/common/*.d.ts"))
	require.NoError(t, err)
	told, seen := features(t), 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		for _, m := range publishedMethod.FindAllStringSubmatch(string(text), -1) {
			if m[1] == "textDocument/semanticTokens" { // stands for those of the whole and of a range
				continue
			}
			_, is := told[m[1]]
			assert.True(t, is, "docs/lsp.md does not name %s", m[1])
			seen++
		}
	}
	assert.Greater(t, seen, 70)
}
