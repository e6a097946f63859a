package browsertest

import (
	"fmt"
	"os"
	"strings"
)

// axePath names the file axe.min.js of the package axe-core.
const axePath = "MALTWRIGHT_AXE"

// Axe gives what axe-core finds against the accessibility of the page as it stands: a line a violation, with its
// rule, how grave it is and what it is of. The test skips where MALTWRIGHT_AXE does not name the
// script, so it is the last thing that a test does.
func (tab *Tab) Axe() []string {
	tab.t.Helper()
	path := os.Getenv(axePath)
	if path == "" {
		tab.t.Skip(axePath + " names no axe.min.js: accessibility is NOT TESTED; .ci/run installs axe-core")
	}
	script, err := os.ReadFile(path)
	if err != nil {
		tab.t.Fatal(err)
	}
	Eval[bool](tab, string(script)+"\n;true")
	var found []string
	for _, v := range Eval[[]violation](tab, "axe.run(document).then(r => r.violations.map(v => ({id: v.id, impact: v.impact, help: v.help, nodes: v.nodes.map(n => n.html)})))") {
		found = append(found, fmt.Sprintf("%s (%s): %s: %s", v.ID, v.Impact, v.Help, strings.Join(v.Nodes, " | ")))
	}
	return found
}

type violation struct {
	ID, Impact, Help string
	Nodes            []string
}
