package csv

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestACellThatWouldBeAFormulaIsText(t *testing.T) {
	for cell, want := range map[string]string{
		"=1+1": "'=1+1", "+1+1": "'+1+1", "-1+1": "'-1+1", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", "\r=1": "'\r=1", "＝1": "'＝1",
		"-": "-", "-3.5": "-3.5", "-3": "-3", "-3 x": "'-3 x", "--3": "'--3", "": "", "26-03": "26-03", "a=b": "a=b", "'=1": "'=1",
	} {
		assert.Equal(t, want, inert(cell), "%q", cell)
	}
}
