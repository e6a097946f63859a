package serve

import (
	"net/http"
	"os"
	"testing"
	"time"

	"maltwright/cmd/folder"
)

func TestShots(t *testing.T) {
	addr := os.Getenv("SHOTS")
	if addr == "" {
		t.Skip()
	}
	f := fakeAt(t, "2026-04-14 12:00")
	f.answer = folder.Answer{Batch: "26-05", Lines: []string{"weighed 84 kg at 2026-04-14 12:00"}, Says: "moisture 93 % (forecast 43.6 %); next: turn at 14:30", Doubts: []folder.Doubt{{Asks: true, Message: "84 kg would be 93 % moisture; 8.99 to 9.21 kg is likely", Hint: "it fits as 8.4 kg, with the decimal point moved"}}, Offer: "weighed 8.4 kg at 2026-04-14 12:00"}
	h := handler(f, Options{Clock: func() time.Time { return f.now }, Calendar: "/due.ics"})
	_ = http.ListenAndServe(addr, h)
}
