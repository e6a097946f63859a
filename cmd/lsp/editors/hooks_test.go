package editors

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// repository makes one of git with what stands in a folder.
func repository(t *testing.T, dir string, env []string) func(args ...string) (string, error) {
	t.Helper()
	git := func(args ...string) (string, error) {
		cmd := exec.Command("git", append([]string{"-c", "user.name=A", "-c", "user.email=a@b"}, args...)...)
		cmd.Dir, cmd.Env = dir, env
		out, err := cmd.CombinedOutput()
		return string(out), err
	}
	for _, args := range [][]string{{"init", "-q", "-b", "main"}, {"add", "-A"}, {"commit", "-qm", "first"}} {
		out, err := git(args...)
		require.NoError(t, err, out)
	}
	return git
}

func TestTheHooksOfPreCommit(t *testing.T) {
	t.Run("of a clone", func(t *testing.T) { hooked(t, 0) })
	t.Run("without a clone", func(t *testing.T) { hooked(t, 1) })
}

// hooked commits with the hooks of the nth configuration of the page.
func hooked(t *testing.T, nth int) {
	hooks := lookUp(t, "pre-commit")
	env := append(environment(t, t.TempDir()), "PRE_COMMIT_HOME="+t.TempDir())
	project := t.TempDir()
	text, err := os.ReadFile(filepath.Join(root, ".pre-commit-hooks.yaml"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(project, ".pre-commit-hooks.yaml"), text, 0o644))
	head, err := repository(t, project, env)("rev-parse", "HEAD")
	require.NoError(t, err, head)

	dir := copied(t, "pale.malt", "loft.malt")
	config := fenced(t, "commits.md", "yaml")[nth]
	if nth == 0 {
		require.Contains(t, config, "rev: COMMIT")
		config = strings.NewReplacer("/path/to/maltwright", project, "COMMIT", strings.TrimSpace(head)).Replace(config)
	}
	for _, id := range []string{"maltwright-check", "maltwright-tidy"} { // the program is there already
		require.Contains(t, config, "- id: "+id)
		if nth == 0 {
			config = strings.Replace(config, "- id: "+id, "- id: "+id+"\n        language: system", 1)
		}
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, ".pre-commit-config.yaml"), []byte(config), 0o644))
	git := repository(t, dir, env)
	install := exec.Command(hooks, "install")
	install.Dir, install.Env = dir, env
	out, err := install.CombinedOutput()
	require.NoError(t, err, "%s", out)

	pale := filepath.Join(dir, "pale.malt")
	write := func(from, to string) {
		text, err := os.ReadFile(pale)
		require.NoError(t, err)
		require.Contains(t, string(text), from)
		require.NoError(t, os.WriteFile(pale, []byte(strings.Replace(string(text), from, to, 1)), 0o644))
	}

	write("soak 7 h in", "soak   8 hours in")
	told, err := git("commit", "-qam", "longer")
	assert.Error(t, err, told)
	assert.Contains(t, told, "laid out pale.malt")
	text, err = os.ReadFile(pale)
	require.NoError(t, err)
	assert.Contains(t, string(text), "      soak 8 h in water")
	told, err = git("commit", "-qam", "longer")
	assert.NoError(t, err, told)

	loft := filepath.Join(dir, "loft.malt") // the house alone is of the commit, and the process is at fault
	house, err := os.ReadFile(loft)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(loft, []byte(strings.Replace(string(house), `kiln "tray kiln"`, `kiln "dryer"`, 1)), 0o644))
	told, err = git("commit", "-qam", "another name")
	assert.Error(t, err, told)
	assert.Contains(t, told, `no kiln is called "tray kiln"`)
}
