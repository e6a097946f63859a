package editors

import (
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEmacsAsThePageSetsItUp(t *testing.T) {
	emacs := lookUp(t, "emacs")
	if exec.Command(emacs, "--batch", "--eval", "(progn (package-initialize) (require 'eglot))").Run() != nil {
		t.Skip("eglot is not here: what docs/editors says of Emacs is NOT TESTED; .ci/run installs it")
	}
	script, err := filepath.Abs("testdata/session.el")
	require.NoError(t, err)
	dir := slipped(t)
	home := home(t, "emacs.md", "elisp", ".emacs.d/init.el")
	a := session(t, home, dir, emacs, "--batch", "--eval", "(package-initialize)", "-l", filepath.Join(home, ".emacs.d", "init.el"), "-l", script)
	judge(t, a, dir)
	assert.Contains(t, a.text(t, "echoed"), "watter", "a finding stands before the meaning of the word")
}
