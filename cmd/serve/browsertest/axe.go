package browsertest

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

// axePath names the file axe.min.js of the package axe-core.
const axePath = "MALTWRIGHT_AXE"

// NeedsAxe skips the test where MALTWRIGHT_AXE does not name the script.
func NeedsAxe(t testing.TB) {
	t.Helper()
	if os.Getenv(axePath) == "" {
		t.Skip(axePath + " names no axe.min.js: accessibility is NOT TESTED; .ci/run installs axe-core")
	}
}

// Axe gives what axe-core finds against the accessibility of the page as it stands: a line a violation, with its
// rule, how grave it is and what it is of. The test skips where there is no axe-core, so that this is the last thing that a test does.
func (tab *Tab) Axe() []string { tab.t.Helper(); return tab.axe("{}") }

// Contrast asks the same of the colours alone.
func (tab *Tab) Contrast() []string {
	tab.t.Helper()
	return tab.axe(`{ runOnly: ["color-contrast"] }`)
}

func (tab *Tab) axe(options string) []string {
	tab.t.Helper()
	NeedsAxe(tab.t)
	script, err := os.ReadFile(os.Getenv(axePath))
	if err != nil {
		tab.t.Fatal(err)
	}
	if !Eval[bool](tab, "!!window.axe") {
		Eval[bool](tab, string(script)+"\n;true")
	}
	var found []string
	for _, v := range Eval[[]violation](tab, "axe.run(document, "+options+").then(r => r.violations.map(v => ({id: v.id, impact: v.impact, help: v.help, nodes: v.nodes.map(n => n.html)})))") {
		found = append(found, fmt.Sprintf("%s (%s): %s: %s", v.ID, v.Impact, v.Help, strings.Join(v.Nodes, " | ")))
	}
	return found
}

type violation struct {
	ID, Impact, Help string
	Nodes            []string
}
