package margin

import (
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// folderOf are files by their names.
type folderOf map[string]string

func (b folderOf) Read(name string) ([]byte, error) {
	if text, ok := b[name]; ok {
		return []byte(text), nil
	}
	return nil, fs.ErrNotExist
}

// housed is a process of the examples with its house written otherwise.
func housed(t testing.TB, process, house string) Margin {
	t.Helper()
	tree, _ := syntax.Parse(source.New("pale.malt", []byte(process)))
	r := check.File("pale.malt", []byte(process), ".", folderOf{"loft.malt": house}, check.Options{Context: t.Context()})
	return Of(tree, r, nil, Options{})
}

func TestALensCountsWhatIsFoundInTheFilesThatAreUsed(t *testing.T) {
	process, house := string(exampleOf(t, "pale.malt").text), string(exampleOf(t, "loft.malt").text)
	for _, c := range []struct{ name, process, house, says string }{
		{"as it is", process, house, `^no findings; 8 d 8 h, 4\.98 kg of malt`},
		{"dressed seed", process, strings.Replace(house, "treated       no", "treated       yes", 1), `^1 danger; 8 d 8 h`},
		{"a brace too few", process, strings.Replace(house, "}", "", 1), `^[1-9][0-9]* faults?.*; not forecast: put loft\.malt, line [0-9]+, right first$`},
		{"a fault of its own", strings.Replace(process, "soak 7 h", "soak 7 kg", 1), house, `^1 fault.*; not forecast: put line [0-9]+ right first$`},
		{"no house", strings.Replace(process, "loft.malt", "left.malt", 1), house, `^[1-9][0-9]* faults?.*; not forecast: put line [0-9]+ right first$`},
	} {
		require.True(t, c.name == "as it is" || c.process != process || c.house != house, c.name)
		m := housed(t, c.process, c.house)
		require.Len(t, m.Lenses, 1, c.name)
		assert.Regexp(t, c.says, m.Lenses[0].Text, c.name)
	}
}

func TestWhatIsKeptOfALensDoesNotSayThatNothingIsFound(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	m := e.margin(t, Options{})
	require.True(t, strings.HasPrefix(m.Lenses[0].Text, "no findings; "))
	kept := m.On(e.tree)
	require.Len(t, kept.Lenses, 1)
	assert.Equal(t, strings.TrimPrefix(m.Lenses[0].Text, "no findings; "), kept.Lenses[0].Text)
}

func TestALensNamesTheGateThatHoldsLeastOften(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	assert.Regexp(t, `^no findings; the steep gate holds in [5-8] in 10; 8 d 8 h`, e.margin(t, Options{}).Lenses[0].Text)
	e = exampleOf(t, "mill/craft.malt")
	assert.NotContains(t, e.margin(t, Options{}).Lenses[0].Text, "gate")
}
