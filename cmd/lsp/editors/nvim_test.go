package editors

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// slipped gives a folder with a house and a process of it, in which somebody has mistyped a word.
func slipped(t *testing.T) string {
	t.Helper()
	dir := copied(t, "pale.malt", "loft.malt")
	path := filepath.Join(dir, "pale.malt")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, []byte(strings.Replace(string(text), "in water at", "in watter at", 1)), 0o644))
	return dir
}

func TestNeovimAsThePageSetsItUp(t *testing.T) {
	nvim := lookUp(t, "nvim")
	script, err := filepath.Abs("testdata/session.lua")
	require.NoError(t, err)
	dir := slipped(t)
	a := session(t, home(t, "neovim.md", "lua", ".config/nvim/init.lua"), dir, nvim, "--headless", "pale.malt", "-c", "luafile "+script)
	judge(t, a, dir)
	assert.Regexp(t, `\d d .*moisture \d.* %`, a.text(t, "lens"))
	assert.Equal(t, "0", string(a["stale"]), "lenses of a server that has died")
	assert.Equal(t, []string{"dry at air-on 7.5 °C", `from 6 kg of "Far field 2026"`, `from 6 kg of "Mill bend 2026"`, "steep", `use "loft.malt"`}, a.texts(t, "taken"))
	parts := strings.Join(a.texts(t, "parts"), "\n")
	for _, part := range []string{"Loft pale", "germinate", "kiln"} {
		assert.Contains(t, parts, part)
	}
}

// judge looks at what an editor was told in its session.
func judge(t *testing.T, a answers, dir string) {
	t.Helper()
	assert.Equal(t, "malt", strings.TrimSuffix(a.text(t, "filetype"), "-mode"))
	assert.Contains(t, strings.Join(a.texts(t, "findings"), "\n"), "watter")
	assert.NotEmpty(t, a.texts(t, "actions"))
	assert.Equal(t, "soak 7 h in water at 13 °C", strings.TrimSpace(a.text(t, "repaired")))
	hover := a.text(t, "hover")
	assert.Contains(t, hover, "cure")
	assert.Contains(t, hover, "%", "the moisture of the forecast")
	assert.Contains(t, a.texts(t, "offers"), "cool")
	assert.Equal(t, "      soak 7 h in water at 13 °C", a.text(t, "laid_out"))
	assert.Contains(t, a.text(t, "renamed"), `kiln in "box kiln" {`)
	assert.Contains(t, a.text(t, "defined"), `loft.malt: kiln "box kiln" {`)
	hints := strings.Join(a.texts(t, "hints"), "\n")
	assert.Regexp(t, `cure at air-on 82 °C for 5 h \| .*%`, hints)
	assert.Regexp(t, `gate moisture at most 4.5 % \| `, hints)

	for name, line := range map[string]string{"pale.malt": `kiln in "box kiln" {`, "loft.malt": `kiln "box kiln" {`} {
		text, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		assert.Contains(t, string(text), line, name)
		assert.NotContains(t, string(text), "tray kiln", name)
	}
}
