package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
)

func TestAFileBroughtInWithoutQuotesIsOfferedWithThem(t *testing.T) {
	for text, want := range map[string]string{
		"use home.malt\n": `"home.malt"`, "use my-house.malt # mine\n": `"my-house.malt"`, "use home.malt": `"home.malt"`,
	} {
		_, found := Parse(source.New("x.malt", []byte(text)))
		require.Len(t, found, 1, text)
		require.Len(t, found[0].Offers, 1, text)
		e := found[0].Offers[0].Edits[0]
		made := text[:e.Place.Start] + e.New + text[e.Place.End:]
		assert.Contains(t, made, "use "+want)
		assert.Equal(t, "write "+want, found[0].Hint)
		_, again := Parse(source.New("x.malt", []byte(made)))
		assert.Empty(t, again, made)
	}
}

func TestAQuestionMarkForAPoisonIsUnknown(t *testing.T) {
	for _, text := range []string{"treated ?\n", "ergot ?\n", "mould no ?\n"} {
		_, found := Parse(source.New("x.malt", []byte(text)))
		require.NotEmpty(t, found, text)
		assert.Equal(t, "write unknown", found[0].Hint, text)
	}
}
