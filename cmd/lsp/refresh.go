package lsp

import "sync"

// The requests by which an editor is told to ask again.
const (
	refreshHints    = "workspace/inlayHint/refresh"
	refreshLenses   = "workspace/codeLens/refresh"
	refreshFindings = "workspace/diagnostic/refresh"
)

// refreshes are the requests by which an editor is told to ask again. Of each kind one is under way at a time: an editor
// that takes its time is told once more when it has answered, however often something was otherwise meanwhile.
type refreshes struct {
	mu    sync.Mutex
	under map[string]bool
	again map[string]bool
}

// tell tells the editor, where it can be told.
func (r *refreshes) tell(s *session, method string, can bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	switch {
	case !can:
		return
	case r.under[method]:
		r.again[method] = true
		return
	case r.under == nil:
		r.under, r.again = map[string]bool{}, map[string]bool{}
	}
	r.under[method] = true
	s.work.Go(func() {
		for more := true; more; more = r.next(method) {
			if s.ask(s.ctx, method, nil, nil) != nil && s.ctx.Err() != nil {
				return
			}
		}
	})
}

// next tells whether the editor must be told once more.
func (r *refreshes) next(method string) bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	more := r.again[method]
	r.again[method], r.under[method] = false, more
	return more
}

// refreshMargins has the editor ask again for hints and lenses.
func (s *session) refreshMargins() {
	c := s.can().Workspace
	s.refreshes.tell(s, refreshHints, c.InlayHint.RefreshSupport)
	s.refreshes.tell(s, refreshLenses, c.CodeLens.RefreshSupport)
}

// refreshFindings has it ask again for findings, where it asks.
func (s *session) refreshFindings() { s.refreshes.tell(s, refreshFindings, s.pulls()) }

// refresh has it ask again for all that it has asked for and that may be otherwise now.
func (s *session) refresh() {
	s.refreshMargins()
	s.refreshFindings()
}
