package browsertest

import (
	"encoding/json"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// Phone makes the tab as large as a phone of 390 by 844 points, held upright and touched.
func (tab *Tab) Phone() *Tab {
	tab.t.Helper()
	tab.do(chromedp.EmulateViewport(390, 844, chromedp.EmulateScale(2), chromedp.EmulateMobile, chromedp.EmulateTouch, chromedp.EmulatePortrait))
	return tab
}

// Desk makes it as large as a window on a desk.
func (tab *Tab) Desk() *Tab {
	tab.t.Helper()
	tab.do(chromedp.EmulateViewport(1280, 900))
	return tab
}

// Dark has the person prefer dark colours, or light ones.
func (tab *Tab) Dark(dark bool) *Tab {
	tab.t.Helper()
	scheme := map[bool]string{false: "light", true: "dark"}[dark]
	send(tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
	return tab
}

// Print shows the page as it is printed, or as it is seen.
func (tab *Tab) Print(print bool) *Tab {
	tab.t.Helper()
	send(tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: map[bool]string{false: "", true: "print"}[print]})
	return tab
}

// Script lets the pages that come run scripts, or not. Eval works all the same.
func (tab *Tab) Script(on bool) *Tab {
	tab.t.Helper()
	send(tab, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: !on})
	return tab
}

// Away takes the network from the tab, or gives it back.
func (tab *Tab) Away(away bool) *Tab {
	tab.t.Helper()
	send(tab, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{
		{Offline: away, DownloadThroughput: -1, UploadThroughput: -1},
	}})
	send(tab, network.OverrideNetworkState, network.OverrideNetworkStateParams{Offline: away, DownloadThroughput: -1, UploadThroughput: -1})
	return tab
}

// Zone has the clock go by another zone, such as Asia/Kathmandu.
func (tab *Tab) Zone(name string) *Tab {
	tab.t.Helper()
	send(tab, emulation.SetTimezoneOverride, emulation.SetTimezoneOverrideParams{TimezoneID: name})
	return tab
}

// Screenshot is a picture of the whole page, as PNG.
func (tab *Tab) Screenshot() []byte {
	tab.t.Helper()
	return ask(tab, chromedp.FullScreenshot(100))
}

// Sideways is by how many points the page is wider than its window.
func (tab *Tab) Sideways() int {
	tab.t.Helper()
	return Eval[int](tab, "document.documentElement.scrollWidth - document.documentElement.clientWidth")
}

func quoted(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string has a form
	}
	return string(b)
}

// OnDark tells whether the page shows light text on a dark ground.
func (tab *Tab) OnDark() bool {
	tab.t.Helper()
	return Eval[bool](tab, `(() => {
		const light = colour => { const [r, g, b] = colour.match(/[\d.]+/g).map(Number); return r + g + b; }, s = getComputedStyle(document.body);
		return light(s.color) > light(s.backgroundColor);
	})()`)
}
