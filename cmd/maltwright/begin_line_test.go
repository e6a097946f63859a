package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A name in which a shell would see more than letters is quoted for it; all others stand as in the record.
func TestALineToTypeIsOneForTheShell(t *testing.T) {
	for line, want := range map[string]string{
		`weighed 8.33 kg in "blue tub" after soak 1`:        `weighed 8.33 kg in "blue tub" after soak 1`,
		`weighed 8.33 kg in "Joe's tub" after soak 1`:       `weighed 8.33 kg in "Joe's tub" after soak 1`,
		`weighed 8.33 kg in "Joe's $5 tub" after soak 1`:    `weighed 8.33 kg in 'Joe'\''s $5 tub' after soak 1`,
		"weighed 8.33 kg in \"a`b\" after soak 1":           "weighed 8.33 kg in 'a`b' after soak 1",
		`weighed 8.33 kg in "the \"big\" one" after soak 1`: `weighed 8.33 kg in 'the "big" one' after soak 1`,
		`weighed bag 1.4 kg after soak 1`:                   `weighed bag 1.4 kg after soak 1`,
	} {
		assert.Equal(t, want, termsForShell(line))
	}
}
