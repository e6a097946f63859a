package browsertest

// seen are the texts of the page as they lie, cut by nothing: a box a line of text.
const seen = `[...(function* () {
	const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let n; n = walk.nextNode();) {
		const e = n.parentElement, style = getComputedStyle(e);
		if (!n.data.trim() || style.visibility === "hidden" || e.closest("script,style,option,.skip:not(:focus)") || !e.checkVisibility({ checkOpacity: true })) continue;
		const range = document.createRange();
		range.selectNodeContents(n);
		for (const r of range.getClientRects()) if (r.width > 2 && r.height > 2) yield { n, e, text: n.data.trim().slice(0, 40), l: r.left, r: r.right, t: r.top + r.height * 0.2, b: r.bottom - r.height * 0.2 };
	}
})()]`

// Overlaps gives the texts that lie over one another, each pair as one.
func (tab *Tab) Overlaps() []string {
	tab.t.Helper()
	return Eval[[]string](tab, `(() => {
		const all = `+seen+`.filter(x => { for (let e = x.e; e; e = e.parentElement) { const s = getComputedStyle(e); if (s.clip !== "auto" || s.clipPath !== "none") return false; } return true; }).sort((a, b) => a.t - b.t), bad = [];
		for (let i = 0; i < all.length; i++) for (let j = i + 1; j < all.length && all[j].t < all[i].b; j++) {
			const a = all[i], b = all[j];
			if (a.n !== b.n && Math.min(a.r, b.r) - Math.max(a.l, b.l) > 2 && Math.min(a.b, b.b) - Math.max(a.t, b.t) > 1) bad.push(a.text + " over " + b.text);
		}
		return bad;
	})()`)
}

// Small gives what can be touched and is lower than so many points. A link in the run of a text stands as it is.
func (tab *Tab) Small(least float64) []string {
	tab.t.Helper()
	type thing struct {
		Text string
		High float64
	}
	var small []string
	for _, x := range Eval[[]thing](tab, `[...document.querySelectorAll("a[href],button,summary,input:not([type=hidden]),select,textarea")].filter(e => e.checkVisibility() && e.getClientRects().length && !e.matches(".skip") && !(e.matches("a") && e.closest("p,q,small"))).map(e => ({ text: e.outerHTML.slice(0, 90), high: (e.type === "radio" || e.type === "checkbox" ? e.closest("label") : e).getBoundingClientRect().height }))`) {
		if x.High < least-0.5 {
			small = append(small, x.Text)
		}
	}
	return small
}
