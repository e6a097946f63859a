package main

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

func TestTheVersionThatTheLinkerStampedIsTold(t *testing.T) {
	defer func(was string) { stamped = was }(stamped)
	stamped = "1.2.3+changed 104b3ffdcc1163a0 1795000000"
	out, _, code := run("version")
	assert.Zero(t, code)
	assert.Contains(t, out, "maltwright 1.2.3+changed\ncommit 104b3ffdcc1163a0 of 2026-11-18, with changes that are in no commit\nbuilt with go")
	assert.Contains(t, out, ", by cmd/release\n")
	page, _, _ := run("man")
	assert.Contains(t, page, ".TH MALTWRIGHT 1 2026\\-11\\-18 \"maltwright 1.2.3\"")
	assert.Equal(t, time.Unix(1795000000, 0), built().time)
}
