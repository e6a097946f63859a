package main

import (
	"crypto/tls"
	"net/http"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
	"maltwright/cmd/serve/guard"
)

// A phone that was let in goes on when the page is started anew before its hours are over.
func TestInANetworkAPhoneOutlivesANewStart(t *testing.T) {
	own, folder, cache := ownAddress(t).String(), browsertest.Folder(t, "home"), t.TempDir()
	kept := func(w *World) { w.Cache = cache }
	first := servingFolder(t, folder, kept, "--lan", own)
	phone := first.opens(first.page)
	status, _ := asked(t, phone, first.base()+"/")
	require.Equal(t, http.StatusOK, status)
	assert.NotContains(t, first.said.String(), "those of before")
	first.ends()

	second := servingFolder(t, folder, kept, "--lan", own)
	assert.Equal(t, []string{first.page, first.reader}, []string{second.page, second.reader})
	assert.Contains(t, second.said.String(), "The addresses are those of before")
	status, _ = asked(t, phone, second.base()+"/")
	assert.Equal(t, http.StatusOK, status, "by the cookie that it has")
	reader := second.opens(second.reader)
	second.ends()

	third := servingFolder(t, folder, kept, "--lan", own, "--anew")
	assert.NotEqual(t, second.page, third.page)
	for _, c := range []*http.Client{phone, reader} {
		status, said := asked(t, c, third.base()+"/")
		assert.Equal(t, http.StatusUnauthorized, status)
		assert.Contains(t, said, "open that one in this browser")
	}
	status, _ = asked(t, phone, second.page)
	assert.Equal(t, http.StatusUnauthorized, status, "the link of before opens nothing")
	third.ends()

	late := servingFolder(t, folder, func(w *World) {
		w.Cache, w.clock = cache, func() time.Time { return time.Now().Add((hoursInNetwork + 1) * time.Hour) }
	}, "--lan", own)
	assert.NotEqual(t, third.page, late.page, "its hours were over")
	files, err := filepath.Glob(filepath.Join(cache, "*.kept"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, name := range files {
		info, err := os.Stat(name)
		require.NoError(t, err)
		if info.Size() < 1024 {
			assert.Zero(t, info.Mode().Perm()&0o077, "%s can be read by others", name)
		}
	}
}

func TestKeysOfAPageHoldAsLongAsItsHours(t *testing.T) {
	now := time.Date(2026, 3, 6, 9, 0, 0, 0, time.UTC)
	w := World{Cache: t.TempDir(), clock: func() time.Time { return now }}
	lan := inTheWLAN
	at := func(p place, later time.Duration) keys {
		t.Helper()
		now = time.Date(2026, 3, 6, 9, 0, 0, 0, time.UTC).Add(later)
		p.until = now.Add(12 * time.Hour)
		k, _ := w.keysOf(p, false)
		again, is := w.keysOf(p, false)
		assert.Equal(t, p.loopback(), !is)
		assert.Equal(t, is, k == again)
		for _, token := range []guard.Token{k.Write, k.Read, k.WriteCookie, k.ReadCookie} {
			assert.True(t, token.Whole())
		}
		return k
	}
	first := at(lan, 0)
	assert.Equal(t, first.Write, at(lan, 11*time.Hour).Write)
	assert.Equal(t, first.Write, at(lan, 22*time.Hour).Write, "a new start goes on")
	assert.NotEqual(t, first.Write, at(lan, 35*time.Hour).Write, "it was over for an hour")

	second := at(lan, 36*time.Hour)
	other, secure := lan, lan
	other.port++
	secure.certificate = &tls.Certificate{}
	assert.NotEqual(t, second.Write, at(other, 36*time.Hour).Write, "another address has others")
	assert.NotEqual(t, second.Write, at(secure, 36*time.Hour).Write, "what plain HTTP told opens nothing over TLS")
	assert.NotEqual(t, at(here, 36*time.Hour).Write, at(here, 36*time.Hour).Write, "on this machine alone they are of one run")
	w.forgetKeys(lan)
	assert.NotEqual(t, second.Write, at(lan, 36*time.Hour).Write, "the last batch was over")

	drawn := at(lan, 40*time.Hour)
	for later := 40 * time.Hour; later < 29*24*time.Hour; later += 11 * time.Hour {
		require.Equal(t, drawn.Write, at(lan, later).Write)
	}
	for later := 29 * 24 * time.Hour; later < 33*24*time.Hour; later += 11 * time.Hour {
		second = at(lan, later)
	}
	assert.NotEqual(t, drawn.Write, second.Write, "none is older than a month")
}
