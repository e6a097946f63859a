package serve

import (
	"context"
	"net/http"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
)

// TestShots serves a folder as of a time, to be looked at.
func TestShots(t *testing.T) {
	addr := os.Getenv("SHOTS")
	if addr == "" {
		t.Skip("SHOTS names no address to serve at")
	}
	now, err := time.ParseInLocation(stamp, os.Getenv("SHOTS_AT"), time.Local)
	require.NoError(t, err)
	clock := func() time.Time { return now }
	d, err := folder.Open(os.Getenv("SHOTS_IN"), folder.Options{Clock: clock, Follow: true})
	require.NoError(t, err)
	require.NoError(t, http.ListenAndServe(addr, New(d, Options{Clock: clock, Calendar: "/due.ics", MayWrite: func(context.Context) bool { return true }})))
}
