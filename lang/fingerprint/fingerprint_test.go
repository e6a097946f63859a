package fingerprint

import (
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

type files map[string]string

func (f files) Read(path string) ([]byte, error) {
	text, ok := f[path]
	if !ok {
		return nil, fs.ErrNotExist
	}
	return []byte(text), nil
}

// example is a process of the examples with its house.
func example(t *testing.T, name string) files {
	t.Helper()
	in := files{}
	for _, file := range []string{name, "loft.malt", "batches/learnt.malt"} {
		text, err := os.ReadFile("../../examples/" + file)
		require.NoError(t, err)
		in[file] = string(text)
	}
	return in
}

func print(t *testing.T, in files, name string) string {
	t.Helper()
	h, _ := read.Load(name, []byte(in[name]), ".", in)
	require.NotEmpty(t, h.Processes)
	return Of(h.Processes[0])
}

func changed(in files, file, old, new string) files {
	out := files{}
	for k, v := range in {
		out[k] = v
	}
	out[file] = strings.Replace(in[file], old, new, 1)
	return out
}

func TestAFingerprintIsTwelveSigns(t *testing.T) {
	assert.Regexp(t, `^[0-9a-f]{12}$`, print(t, example(t, "pale.malt"), "pale.malt"))
}

func TestLayoutCommentsAndWhatTheProcessDoesNotUseLeaveItAsItWas(t *testing.T) {
	in := example(t, "pale.malt")
	was := print(t, in, "pale.malt")
	same := map[string]files{
		"a comment":               changed(in, "pale.malt", "make ", "# as last year\n  make "),
		"a comment in the house":  changed(in, "loft.malt", "grain ", "# as last year\ngrain "),
		"blanks":                  changed(in, "pale.malt", "make ", "make     "),
		"another unit":            changed(in, "pale.malt", "from 6 kg", "from 6000 g"),
		"another process":         changed(in, "pale.malt", "process ", "process \"Other\" { make pale malt }\nprocess "),
		"another lot":             changed(in, "loft.malt", "grain ", "grain \"Other\" { species rye }\ngrain "),
		"an acceptance":           changed(in, "pale.malt", "make ", "accept oat-hull because \"so\"\n  make "),
		"a delivery":              changed(in, "loft.malt", "species ", "delivered 2 t\n  species "),
		"what another weighs":     changed(in, "loft.malt", "vessel ", "vessel \"other tub\" { holds 9 l; weighs 500 g }\nvessel "),
		"where the lot lies":      changed(in, "loft.malt", "species ", "store in \"silo 2\"\n  species "),
		"what was learnt of none": changed(in, "loft.malt", "grain ", "house \"Loft\" { drying 0.9 of \"old oven\" }\nkiln \"old oven\" { area 1 m2 }\ngrain "),
	}
	for what, with := range same {
		assert.NotEqual(t, in, with, what)
		if what == "another process" {
			h, _ := read.Load("pale.malt", []byte(with["pale.malt"]), ".", with)
			assert.Equal(t, was, Of(h.Processes[1]), what)
			continue
		}
		assert.Equal(t, was, print(t, with, "pale.malt"), what)
	}
}

func TestTidyingLeavesItAsItWas(t *testing.T) {
	in := example(t, "pale.malt")
	messy := strings.NewReplacer("  ", "\t", " {\n", "\n{\n", "13 °C", "13 ° C").Replace(in["pale.malt"])
	tree, found := syntax.Parse(source.New("pale.malt", []byte(messy)))
	require.Empty(t, found)
	was := print(t, in, "pale.malt")
	assert.Equal(t, was, print(t, changed(in, "pale.malt", in["pale.malt"], messy), "pale.malt"))
	assert.Equal(t, was, print(t, changed(in, "pale.malt", in["pale.malt"], string(layout.Write(tree))), "pale.malt"))
}

func TestADefinitionInAnotherFileIsTheSame(t *testing.T) {
	in := example(t, "pale.malt")
	was := print(t, in, "pale.malt")
	tub := regexp.MustCompile(`vessel "blue tub" .*\n`).FindString(in["loft.malt"])
	require.NotEmpty(t, tub)
	in["tub.malt"] = tub
	moved := changed(changed(in, "loft.malt", "vessel \"blue tub\"", "vessel \"old tub\""), "pale.malt", "use \"loft.malt\"", "use \"loft.malt\"\nuse \"tub.malt\"")
	require.Contains(t, moved["loft.malt"], "old tub")
	assert.Equal(t, was, print(t, moved, "pale.malt"))
}

func TestWhatTheProcessIsMadeByChangesIt(t *testing.T) {
	in := example(t, "pale.malt")
	prints := map[string]string{print(t, in, "pale.malt"): "as it is"}
	for what, with := range map[string]files{
		"a soak":             changed(in, "pale.malt", "soak 7 h", "soak 8 h"),
		"the charge":         changed(in, "pale.malt", "from 6 kg", "from 5 kg"),
		"a step less":        changed(in, "pale.malt", "    gate moisture at most 4.5 %\n", ""),
		"the lot":            changed(in, "loft.malt", " 12.4 %", " 12.5 %"),
		"the site":           changed(in, "loft.malt", "water    9 to 12", "water    9 to 13"),
		"what it weighs":     changed(in, "loft.malt", "weighs 990 g", "weighs 1.2 kg"),
		"the vessel":         changed(in, "loft.malt", "holds 25 l", "holds 26 l"),
		"the floor":          changed(in, "loft.malt", "area 0.3 m2", "area 0.4 m2"),
		"the kiln":           changed(in, "loft.malt", "airflow 60 m3/h", "airflow 61 m3/h"),
		"a limit":            changed(in, "loft.malt", "site ", "limits { bed-temperature at most 22 °C }\nsite "),
		"learnt":             changed(in, "loft.malt", "site ", "house \"Loft\" { growth 0.95 error 0.02 }\nsite "),
		"learnt of the kiln": changed(in, "loft.malt", "site ", "house \"Loft\" { drying 0.95 error 0.02 of \"tray kiln\" }\nsite "),
	} {
		got := print(t, with, "pale.malt")
		assert.Empty(t, prints[got], "%s makes no difference", what)
		prints[got] = what
	}
}

// Records were pinned when the language said corns: they stay pinned to the same process.
func TestAnOlderWordLeavesAProcessAsItWas(t *testing.T) {
	in := example(t, "pale.malt")
	was := print(t, in, "pale.malt")
	old := changed(changed(in, "loft.malt", "kernel-weight", "corn-weight"), "loft.malt", "kernels", "corns")
	require.Contains(t, old["loft.malt"], "corn-weight")
	assert.Equal(t, was, print(t, old, "pale.malt"))
	assert.Contains(t, text([]*syntax.Tree{parsed(`grain "kernels" { kernel-weight 46 g; germination 97 % of 200 kernels }`)}), "grain \"kernels\"\n  corn-weight 46 g\n  germination 97 % of 200 corns\n")
}

func parsed(text string) *syntax.Tree {
	tree, _ := syntax.Parse(source.New("x.malt", []byte(text)))
	return tree
}

// What people are told of a lot and no forecast goes by may be found out while the batch is under way.
func TestWhatIsToldOfALotLeavesTheFingerprint(t *testing.T) {
	in := example(t, "pale.malt")
	was := print(t, in, "pale.malt")
	for old, now := range map[string]string{
		"  treated       no\n":    "  treated       unknown\n",
		"  kernel-weight 46 g":    "  mould none\n  ergot none\n  kernel-weight 46 g",
		"at 4 ml on 2026-02-02":   "at 4 ml on 2026-03-02",
		"at 8 ml on 2026-02-02\n": "at 8 ml\n",
	} {
		require.Contains(t, in["loft.malt"], old)
		assert.Equal(t, was, print(t, changed(in, "loft.malt", old, now), "pale.malt"), now)
	}
	assert.NotEqual(t, was, print(t, changed(in, "loft.malt", "germination   97 %", "germination   96 %"), "pale.malt"))
}

// A record that was pinned when such lines counted is still pinned to the process.
func TestAFingerprintWithWhatIsToldHolds(t *testing.T) {
	in := example(t, "pale.malt")
	h, _ := read.Load("pale.malt", []byte(in["pale.malt"]), ".", in)
	p := h.Processes[0]
	whole := signs(Trees(p))
	require.NotEqual(t, whole, Of(p))
	assert.True(t, Is(p, whole))
	assert.True(t, Is(p, Of(p)))
	assert.False(t, Is(p, "3f9a2c71d0e4"))
	other, _ := read.Load("pale.malt", []byte(in["pale.malt"]), ".", changed(in, "loft.malt", "moisture      12.4 %", "moisture      12.5 %"))
	assert.False(t, Is(other.Processes[0], whole))

	for _, form := range []func(*model.Process) string{Of, func(p *model.Process) string { return signs(Trees(p)) }} {
		anew, ok := Anew(form(p), p, other.Processes[0])
		assert.True(t, ok)
		assert.Equal(t, form(other.Processes[0]), anew)
	}
	_, ok := Anew("3f9a2c71d0e4", p, other.Processes[0])
	assert.False(t, ok)
}
