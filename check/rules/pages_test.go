package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

const pages = "../../docs/rules"

// Each rule has a page, made from its declaration; MALTWRIGHT_UPDATE=1 writes them.
func TestEveryRuleHasItsPage(t *testing.T) {
	wanted := map[string]bool{"README.md": true}
	for _, r := range check.Rules() {
		name := r.Name + ".md"
		assert.False(t, wanted[name], "two rules are called %s", r.Name)
		wanted[name] = true
		golden.File(t, filepath.Join(pages, name), rulePage(r))
	}
	golden.File(t, filepath.Join(pages, "README.md"), rulesIndex(check.Rules()))
	files, err := os.ReadDir(pages)
	require.NoError(t, err)
	for _, f := range files {
		if wanted[f.Name()] {
			continue
		}
		if golden.Updating() {
			require.NoError(t, os.Remove(filepath.Join(pages, f.Name())))
			continue
		}
		assert.Failf(t, "a page of no rule", "%s", f.Name())
	}
}

func rulePage(r finding.Rule) string {
	var b strings.Builder
	b.WriteString(r.Page())
	if _, err := os.Stat("../../examples/broken/" + r.Name + ".malt"); err == nil {
		fmt.Fprintf(&b, "\nA file that raises it: [%[1]s.malt](../../examples/broken/%[1]s.malt), and what\n`check` says of it: [%[1]s.txt](../../examples/broken/%[1]s.txt).\n", r.Name)
	}
	fmt.Fprintf(&b, "\nSince version %s. Back to [all rules](README.md).\n", since(r))
	return b.String()
}

func rulesIndex(list []finding.Rule) string {
	var b strings.Builder
	fmt.Fprintf(&b, `# Rules

What %s looks for: %d rules. A *danger* can hurt people, a *fault* is impossible or
loses the grain, a *caution* is likely to go wrong, a *note* is worth knowing. The
same is shown by %s and its name.

| rule | usually | when |
|---|---|---|
`, "`check`", len(list), "`explain`")
	for _, r := range list {
		fmt.Fprintf(&b, "| [%[1]s](%[1]s.md) | %s | %s |\n", r.Name, r.Severity, strings.ReplaceAll(r.Title, "|", `\|`))
	}
	return b.String()
}

func since(r finding.Rule) string {
	if r.Since == "" {
		return "0.1"
	}
	return r.Since
}
