package serve

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/serve/browsertest"
)

// clockwork stands before the scripts of a page: its clock stands still until the test moves it, what it does every so often
// is done when the test says so, and the tones that it would play are counted.
const clockwork = `(() => {
	const began = Date.now(), Old = Date, every = [];
	let by = 0;
	window.tones = 0;
	localStorage.clear();
	window.Date = class extends Old {
		constructor(...at) { at.length ? super(...at) : super(began + by); }
		static now() { return began + by; }
	};
	window.setInterval = f => every.push(f);
	window.passes = ms => { by += ms; every.forEach(f => f()); return window.tones; };
	const part = () => ({ connect: x => x, frequency: {}, gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} } });
	window.AudioContext = class {
		currentTime = 0;
		resume() {}
		close() {}
		createGain() { return part(); }
		createOscillator() { return { ...part(), start() { window.tones++; }, stop() {} }; }
	};
})()`

// A page that is open tells by its title and by a sound when a visit falls due: once, and only to whoever asked for the sound.
func TestInABrowserAVisitThatFallsDueIsTold(t *testing.T) {
	s, base, batch, tab := opened(t, browsertest.Open(t))
	tab.Before(clockwork)
	passes := func(by time.Duration) (tones int) {
		t.Helper()
		s.later(by)
		return browsertest.Eval[int](tab, fmt.Sprintf("passes(%d)", by.Milliseconds()))
	}
	for _, at := range []string{batch, base + "/"} {
		s.at("2026-04-14 12:00")
		tab.Go(at)
		title := tab.Title()
		assert.NotContains(t, title, "due")
		tab.Until(`localStorage.length > 0`) // the machine was asked what is due, and what its clock shows
		tab.Click("#wake button")
		assert.Equal(t, "true", browsertest.Eval[string](tab, `document.querySelector("#wake button").getAttribute("aria-pressed")`))
		tried := passes(0)
		assert.Positive(t, tried, "it is heard when it is asked for")
		assert.Equal(t, tried, passes(149*time.Minute), "a minute before")
		assert.Equal(t, title, tab.Title())
		rung := passes(time.Minute)
		assert.Greater(t, rung, tried, "at 14:30")
		assert.Equal(t, "due: 26-05, turn", tab.Title())
		assert.Equal(t, rung, passes(5*time.Minute), "told once")
		tab.Click("#wake button")
		assert.Equal(t, rung, passes(8*time.Hour), "no sound any more")
		assert.Contains(t, tab.Title(), "due: 26-05")
		assert.Empty(t, tab.Said())
	}
}
