package editors

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestVimAsThePageSetsItUp(t *testing.T) {
	vim := lookUp(t, "vim")
	if out, _ := exec.Command(vim, "--version").Output(); strings.Contains(string(out), "-syntax") {
		t.Skip("this build of Vim is too small: what docs/editors says of it is NOT TESTED")
	}
	script, err := filepath.Abs("testdata/session.vim")
	require.NoError(t, err)
	dir, home := slipped(t), home(t, "vim.md", "vim", ".vimrc")
	a := session(t, home, dir, vim, "-e", "-s", "-i", "NONE", "-n", "-u", filepath.Join(home, ".vimrc"), "-S", script)
	assert.Equal(t, "malt", a.text(t, "filetype"))
	assert.Contains(t, strings.Join(a.texts(t, "findings"), "\n"), `1 pale.malt 11 19 E "watter" is not one of the words in takes [unknown-word]`)
	assert.Equal(t, "watter", a.text(t, "cursor"))
	assert.Equal(t, "      soak 7 h in water at 13 °C", a.text(t, "repaired"))
	assert.Equal(t, "0", string(a["left"]))
	assert.Equal(t, "loft.malt", a.text(t, "followed"))
}
