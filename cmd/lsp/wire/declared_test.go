package wire

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// declared are the types that the published package of the protocol declares, as text, by name: of an
// interface its body and what it extends, of a type what it stands for.
type declared map[string]string

var (
	comments = regexp.MustCompile(`(?s)/\*.*?\*/|//[^\n]*`)
	heads    = regexp.MustCompile(`(?m)^(?:export )?(?:declare )?(interface|type) (\w+)(?:<[^>{]*>)?(?:\s+extends ([^{]+?))?\s*(\{|=)`)
)

// published reads the declarations, or skips the test where they are not there.
func published(t *testing.T) declared {
	t.Helper()
	modules := os.Getenv("MALTWRIGHT_PROTOCOL")
	if modules == "" {
		t.Skip("MALTWRIGHT_PROTOCOL does not say in which node_modules the package vscode-languageserver-protocol is")
	}
	files, err := filepath.Glob(filepath.Join(modules, "vscode-languageserver-protocol/lib/common/*.d.ts"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	d := declared{}
	for _, file := range append(files, filepath.Join(modules, "vscode-languageserver-types/lib/esm/main.d.ts")) {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		d.read(comments.ReplaceAllString(string(text), ""))
	}
	require.Greater(t, len(d), 300)
	return d
}

func (d declared) read(text string) {
	for _, at := range heads.FindAllStringSubmatchIndex(text, -1) {
		kind, name := text[at[2]:at[3]], text[at[4]:at[5]]
		if kind == "type" {
			d[name] = until(text[at[1]:], ';')
			continue
		}
		body := "{" + until(text[at[1]:], '}') + "}"
		if at[6] >= 0 {
			body = strings.ReplaceAll(text[at[6]:at[7]], ",", " & ") + " & " + body
		}
		d[name] = body
	}
}

// until gives the text up to a sign that stands in no brackets.
func until(text string, end byte) string {
	depth := 0
	for i := range len(text) {
		switch c := text[i]; {
		case c == end && depth == 0:
			return text[:i]
		case strings.IndexByte("{([<", c) >= 0:
			depth++
		case strings.IndexByte("})]", c) >= 0, c == '>' && text[i-1] != '=':
			depth--
		}
	}
	return text
}

// cut cuts a text at a sign that stands in no brackets.
func cut(text string, at byte) []string {
	var parts []string
	for text = strings.TrimSpace(text); text != ""; {
		part := until(text, at)
		if s := strings.TrimSpace(part); s != "" {
			parts = append(parts, s)
		}
		text = text[min(len(text), len(part)+1):]
	}
	return parts
}

// member is a field of a declared type.
type member struct {
	of       string
	optional bool
}

// members gives the fields of a type, with those that it has from others. Of several types in one it may be, what one of them has not may be missing.
func (d declared) members(of string) map[string]member {
	list := map[string]member{}
	if arms := cut(of, '|'); len(arms) > 1 {
		count := map[string]int{}
		for _, arm := range arms {
			for name, m := range d.members(arm) {
				count[name]++
				m.optional = m.optional || list[name].optional
				list[name] = m
			}
		}
		for name, m := range list {
			m.optional = m.optional || count[name] < len(arms)
			list[name] = m
		}
		return list
	}
	for _, part := range cut(of, '&') {
		part = strings.TrimSpace(part)
		if strings.HasPrefix(part, "{") {
			for _, m := range cut(strings.TrimSuffix(part[1:], "}"), ';') {
				name, is, ok := strings.Cut(m, ":")
				if !ok || strings.HasPrefix(m, "[") {
					continue
				}
				name = strings.TrimPrefix(strings.TrimSpace(name), "readonly ")
				list[strings.TrimSuffix(name, "?")] = member{strings.TrimSpace(is), strings.HasSuffix(name, "?")}
			}
			continue
		}
		for name, m := range d.members(d[plain(part)]) {
			list[name] = m
		}
	}
	return list
}

// plain is a name without what it is of.
func plain(name string) string {
	name, _, _ = strings.Cut(name, "<")
	return strings.TrimSpace(name)
}

// arms are the types that a type may be, names of types that are no structures taken for what they stand.
func (d declared) arms(of string) []string {
	var list []string
	for _, arm := range cut(of, '|') {
		if strings.HasPrefix(arm, "(") && strings.HasSuffix(arm, ")") {
			list = append(list, d.arms(arm[1:len(arm)-1])...)
			continue
		}
		is, known := d[arm]
		if known && !strings.Contains(is, "{") {
			list = append(list, d.arms(is)...)
			if len(d.members(is)) > 0 {
				list = append(list, arm)
			}
			continue
		}
		list = append(list, arm)
	}
	return list
}
