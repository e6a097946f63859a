package lsp

import (
	"os"
	"path/filepath"
	"sync"

	"maltwright/check"
	"maltwright/cmd/lsp/desk"
)

// pages are those of the rules, written into a folder of the cache when a finding first names one: so
// there is something to open where the network is not.
type pages struct {
	folder string // "" writes none

	mu    sync.Mutex
	texts map[string]string // by the name of the rule; nil until the first is asked for
	at    map[string]string // addresses; "" where it could not be written
}

func newPages(cache string) *pages {
	p := &pages{at: map[string]string{}}
	if cache != "" {
		p.folder = filepath.Join(cache, "rules")
	}
	return p
}

// of is the address of the page of a rule, or "" where there is none.
func (p *pages) of(rule string) string {
	if p.folder == "" {
		return ""
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if at, known := p.at[rule]; known {
		return at
	}
	p.at[rule] = p.written(rule)
	return p.at[rule]
}

func (p *pages) written(rule string) string {
	if p.texts == nil {
		p.texts = map[string]string{}
		for _, r := range check.Rules() {
			p.texts[r.Name] = r.Page()
		}
	}
	text, known := p.texts[rule]
	if !known || os.MkdirAll(p.folder, 0o755) != nil {
		return ""
	}
	name := filepath.Join(p.folder, rule+".md")
	if was, err := os.ReadFile(name); err == nil && string(was) == text {
		return desk.URI(name)
	}
	if os.WriteFile(name, []byte(text), 0o644) != nil {
		return ""
	}
	return desk.URI(name)
}
