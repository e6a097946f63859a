package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"io"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	sampleTime    = time.Date(2026, 3, 6, 7, 8, 9, 0, time.UTC)
	sampleEntries = []entry{{"maltwright", 0o755, []byte("program")}, {"man/man1/maltwright.1", 0o644, []byte("page")}, {"LICENSE", 0o644, []byte("terms")}}
	sampleCommit  = commit{hash: "104b3ffdcc1163a0e2", time: sampleTime, version: "0.0.0-20260306070809.g104b3ffdcc11"}
)

func TestAnArchiveDoesNotTellInWhichOrderOrZoneItWasMade(t *testing.T) {
	other := slices.Clone(sampleEntries)
	slices.Reverse(other)
	elsewhere := sampleTime.In(time.FixedZone("elsewhere", 5*3600))
	for name, write := range map[string]func(io.Writer, string, []entry, time.Time) error{"tar": tarred, "zip": zipped} {
		var a, b bytes.Buffer
		require.NoError(t, write(&a, "top", sorted(sampleEntries), sampleTime), name)
		require.NoError(t, write(&b, "top", sorted(other), elsewhere), name)
		assert.Equal(t, a.Bytes(), b.Bytes(), name)
	}
}

func TestATarHoldsFilesOfNobodyInParticular(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, tarred(&b, "top", sorted(sampleEntries), sampleTime))
	small, err := gzip.NewReader(&b)
	require.NoError(t, err)
	assert.True(t, small.ModTime.IsZero())
	r := tar.NewReader(small)
	for _, want := range sorted(sampleEntries) {
		h, err := r.Next()
		require.NoError(t, err)
		assert.Equal(t, "top/"+want.name, h.Name)
		assert.Equal(t, int64(want.mode), h.Mode)
		assert.Equal(t, []any{0, 0, "root", "root"}, []any{h.Uid, h.Gid, h.Uname, h.Gname})
		assert.True(t, h.ModTime.Equal(sampleTime))
		data, err := io.ReadAll(r)
		require.NoError(t, err)
		assert.Equal(t, want.data, data)
	}
	_, err = r.Next()
	assert.Equal(t, io.EOF, err)
}

func TestAZipHoldsTheSame(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, zipped(&b, "top", sorted(sampleEntries), sampleTime))
	z, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
	require.NoError(t, err)
	require.Len(t, z.File, len(sampleEntries))
	for i, want := range sorted(sampleEntries) {
		f := z.File[i]
		assert.Equal(t, "top/"+want.name, f.Name)
		assert.Equal(t, want.mode, f.Mode())
		assert.True(t, f.Modified.Equal(sampleTime))
	}
}
