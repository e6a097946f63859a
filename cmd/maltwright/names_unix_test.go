//go:build unix

package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/rewrite"
)

// A name need not be text. It is shown written out, and every command works all the same.
func TestAFileWhoseNameIsNoTextWorksLikeAnyOther(t *testing.T) {
	folder, plain := newRecord(t)
	record := "26\xb003\xff.malt"
	require.NoError(t, os.Rename(plain, filepath.Join(folder, record)))
	recipe := "p\xe4le.malt"
	text, err := os.ReadFile(filepath.Join(folder, "pale.malt"))
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, recipe), text, 0o644)
	}
	if err != nil {
		t.Skipf("names must be text here: %v", err)
	}
	slip := "sl\xefp.malt"
	require.NoError(t, os.WriteFile(filepath.Join(folder, slip), []byte("site \"L\" { watter 9 to 12 °C; xyzzy 3 }\n"), 0o644))
	const shown = `<byte 0x`
	for _, c := range []struct {
		code int
		args []string
	}{
		{0, []string{"note", record, "weighed", "7.4", "kg", "--at", "2026-03-06 14:00"}},
		{1, []string{"note", record, "weighed", "74", "kg", "--at", "2026-03-06 15:00"}},
		{0, []string{"check", record}},
		{1, []string{"check", "--no-forecast", slip}},
		{1, []string{"check", "--no-forecast", "--format", "lines", slip}},
		{1, []string{"check", "--no-forecast", "--format", "json", slip}},
		{1, []string{"check", "--no-forecast", "--format", "sarif", slip}},
		{1, []string{"check", "--no-forecast", "--mend", slip}},
		{1, []string{"check", "--no-forecast", "."}},
		{0, []string{"forecast", recipe}},
		{0, []string{"forecast", "--format", "json", recipe}},
		{0, []string{"contrast", "--brief", recipe, "pale.malt"}},
		{0, []string{"contrast", "--brief", "--format", "json", recipe, "pale.malt"}},
		{0, []string{"contrast", "--brief", "--format", "html", recipe, "pale.malt"}},
		{0, []string{"visits", "--start", "2026-03-06T07:00", recipe}},
		{0, []string{"visits", "--start", "2026-03-06T07:00", "--format", "json", recipe}},
		{1, []string{"contrast", "--brief", "--format", "json", slip, recipe}},
		{0, []string{"seasons", "--format", "csv", record}},
		{0, []string{"forecast", "--members", "10", "--spread", recipe}},
		{0, []string{"tidy", slip}},
		{0, []string{"merge", "--name", slip, slip, slip, slip}},
		{0, []string{"plain", recipe}},
		{0, []string{"seasons", record}},
		{0, []string{"seasons", "--format", "json", record}},
		{0, []string{"follow", "--members", "20", record}},
		{0, []string{"follow", "--members", "20", "--format", "json", record}},
		{3, []string{"check", "n\xf6ne.malt"}},
	} {
		var out, errs bytes.Buffer
		w := World{Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
		code := Main(w, c.args)
		assert.Equal(t, c.code, code, "%q\n%s%s", c.args, out.String(), errs.String())
		for _, said := range []string{out.String(), errs.String()} {
			assert.True(t, utf8.ValidString(said), "%q says what is no text:\n%q", c.args, said)
			assert.NotContains(t, said, "\ufffd", "%q", c.args)
			assert.NotContains(t, said, `\ufffd`, "%q", c.args)
		}
		switch strings.Join(c.args, " ") {
		case "check --no-forecast --format json " + slip:
			assert.Contains(t, out.String(), `"file": "sl<byte 0xEF>p.malt"`)
		case "check --no-forecast --format sarif " + slip:
			assert.Contains(t, out.String(), `"uri": "sl%EFp.malt"`)
		case "check --no-forecast " + slip:
			assert.Contains(t, out.String(), "sl"+shown+"EF>p.malt:1:")
		}
		if i := strings.Join(c.args, " "); strings.Contains(i, "json") || strings.Contains(i, "sarif") {
			assert.True(t, json.Valid(out.Bytes()), "%q gives no JSON", c.args)
		}
	}
}

// Whatever stands in the place of a file, no command waits for it.
func TestAPipeIsNotWaitedForByAnyCommand(t *testing.T) {
	folder, _ := newRecord(t)
	require.NoError(t, syscall.Mkfifo(filepath.Join(folder, "pipe.malt"), 0o644))
	for _, args := range [][]string{
		{"check", "pipe.malt"}, {"note", "pipe.malt", "turned"}, {"tidy", "pipe.malt"}, {"plain", "pipe.malt"},
		{"merge", "pale.malt", "pipe.malt", "pale.malt"}, {"contrast", "pipe.malt", "pale.malt"}, {"forecast", "pipe.malt"},
		{"follow", "pipe.malt"}, {"seasons", "pipe.malt"}, {"learn", "pipe.malt"}, {"check", "--mend", "pipe.malt"},
	} {
		var said loud
		ended := make(chan int, 1)
		go func() { ended <- Main(inFolder(folder, &said, rewrite.Options{}), args) }()
		select {
		case code := <-ended:
			assert.Equal(t, ExitFailed, code, args)
			assert.Equal(t, "maltwright: pipe.malt: not a regular file\n", said.String(), args)
		case <-time.After(30 * time.Second):
			t.Fatalf("%q waits", args)
		}
	}
}
