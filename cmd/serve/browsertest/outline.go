package browsertest

import (
	"cmp"
	"encoding/json"
	"fmt"
	"regexp"
	"strings"

	"github.com/chromedp/cdproto/accessibility"
)

// told are the roles that stand in an outline. What else the browser makes of a page, such as groups without
// a name, differs from one version to the next.
var told = map[string]bool{
	"RootWebArea": true, "banner": true, "navigation": true, "main": true, "contentinfo": true, "region": true, "form": true, "article": true,
	"heading": true, "link": true, "button": true, "textbox": true, "combobox": true, "radio": true, "checkbox": true, "group": true, "radiogroup": true,
	"list": true, "listitem": true, "table": true, "row": true, "rowheader": true, "columnheader": true, "cell": true, "caption": true,
	"image": true, "img": true, "status": true, "alert": true, "StaticText": true, "DisclosureTriangle": true, "DisclosureTriangleGrouped": true, "Date": true, "DateTime": true,
}

// sameRole are those that versions of the browser call differently.
var sameRole = map[string]string{"RootWebArea": "page", "StaticText": "text", "DisclosureTriangle": "fold", "DisclosureTriangleGrouped": "fold", "img": "image", "DateTime": "time field", "Date": "time field"}

// leaves are named by all the text that stands in them.
var leaves = map[string]bool{"heading": true, "link": true, "button": true, "fold": true, "caption": true, "image": true, "textbox": true, "combobox": true, "radio": true, "checkbox": true, "rowheader": true, "columnheader": true, "cell": true}

// What a forecast gives changes with each better constant, and is told as what it is.
var (
	figures = regexp.MustCompile(`\d+([.,:/-]\d+)*`)
	days    = regexp.MustCompile(`\b(Mon|Tue|Tues|Wed|Wednes|Thu|Thurs|Fri|Sat|Satur|Sun)(day)?\b`)
	months  = regexp.MustCompile(`\b(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*\b`)
)

const longest = 90

func plainName(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	text = months.ReplaceAllString(days.ReplaceAllString(figures.ReplaceAllString(text, "0"), "Day"), "Month")
	if r := []rune(text); len(r) > longest {
		text = string(r[:longest]) + "…"
	}
	return text
}

// Outline is the page as somebody who does not see it is told of it: roles and names in their order, a line
// each. Figures stand as 0 and days as Day, for they are what a forecast gives; rows that are alike then stand once.
func (tab *Tab) Outline() string {
	tab.t.Helper()
	nodes := send(tab, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{}).Nodes
	if len(nodes) == 0 {
		return ""
	}
	by := outline{}
	for _, n := range nodes {
		by[n.NodeID] = n
	}
	return by.of(nodes[0], 0)
}

type outline map[accessibility.NodeID]*accessibility.Node

// of is what a node tells, and what stands in it.
func (by outline) of(n *accessibility.Node, deep int) string {
	role := roleOf(n)
	name := plainName(textOf(n.Name))
	if n.Ignored || role == "text" && name == "" {
		role = ""
	}
	line, leaf := "", false
	if role != "" {
		line = strings.Repeat("  ", deep) + strings.TrimSpace(role+property(n, "level")+" "+quotedName(name)) + marks(n) + "\n"
		deep, leaf = deep+1, leaves[role] && name != ""
	}
	if role == "time field" { // its parts are those of the language of the browser
		return line
	}
	last := ""
	for _, id := range n.ChildIDs {
		c := by[id]
		if c == nil || leaf && roleOf(c) == "text" {
			continue
		}
		if inner := by.of(c, deep); inner != "" && inner != last {
			line, last = line+inner, inner
		}
	}
	return line
}

// roleOf is the role as an outline has it, "" for one that is not told.
func roleOf(n *accessibility.Node) string {
	role := textOf(n.Role)
	if !told[role] {
		return ""
	}
	return cmp.Or(sameRole[role], role)
}

func quotedName(name string) string {
	if name == "" {
		return ""
	}
	return `"` + name + `"`
}

// marks are the states that are told with a name.
func marks(n *accessibility.Node) (all string) {
	for _, name := range []string{"checked", "expanded", "pressed", "required"} {
		if v := property(n, name); v != "" && (v != " false" || name == "expanded") {
			all += ", " + map[string]string{" true": name, " false": "not " + name}[v]
		}
	}
	return all
}

func property(n *accessibility.Node, name string) string {
	for _, p := range n.Properties {
		if string(p.Name) == name && p.Value != nil {
			return " " + textOf(p.Value)
		}
	}
	return ""
}

func textOf(v *accessibility.Value) string {
	if v == nil || len(v.Value) == 0 {
		return ""
	}
	var any any
	if json.Unmarshal(v.Value, &any) != nil || any == nil {
		return ""
	}
	return fmt.Sprint(any)
}
