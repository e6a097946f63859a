package outline

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/read"
)

const house = `grain "Far field" { species barley; moisture 12 % }
vessel "tub" { holds 25 l; weighs 900 g }
floor "floor" { area 1 m2 }
kiln "kiln" { area 0.5 m2; airflow 60 m3/h; heater 1.5 kW }
scale "kitchen" { division 1 g }
house "Loft" {
  uptake 1.03 of "Far field"
}
`

const process = `use "house.malt"

process "Pale" {
  make pale malt
  from 6 kg of "Far field"
  steep in "tub" and "tub" {
    soak 7 h in water at 13 °C
  }
  germinate on "floor" for 5 days {
    hold bed at 14 to 17 °C
  }
  kiln in "kiln" {
    dry at air-on 50 °C for 12 h
  }
}
`

const record = `use "pale.malt"

batch "26-01" of "Pale" {
  began 2026-03-06 07:00
  weighed 8.3 kg in "tub" on "kitchen" at 14:00 after soak 1
}
`

// loft is a folder with one of each.
func loft() texts {
	return texts{"house.malt": house, "pale.malt": process, "26-01.malt": record}
}

func TestARenameReachesEveryFileThatMeansTheSame(t *testing.T) {
	for _, c := range []struct {
		file, name string
		places     []string
	}{
		{"house.malt", `"Far field"`, []string{"house.malt:1", "house.malt:7", "pale.malt:5"}},
		{"pale.malt", `"Far field"`, []string{"house.malt:1", "house.malt:7", "pale.malt:5"}},
		{"26-01.malt", `"tub"`, []string{"26-01.malt:5", "house.malt:2", "pale.malt:6", "pale.malt:6"}},
		{"26-01.malt", `"kitchen"`, []string{"26-01.malt:5", "house.malt:5"}},
		{"26-01.malt", `"Pale"`, []string{"26-01.malt:3", "pale.malt:3"}},
		{"26-01.malt", `"26-01"`, []string{"26-01.malt:3"}},
		{"pale.malt", `"floor"`, []string{"house.malt:3", "pale.malt:9"}},
		{"pale.malt", `"kiln"`, []string{"house.malt:4", "pale.malt:12"}},
		{"house.malt", `"Loft"`, []string{"house.malt:6"}},
	} {
		x := loft()
		edits, err := In(x).Rename(c.file, x.at(t, c.file, c.name), "New name", nil)
		require.NoError(t, err, c.name)
		var places []string
		for _, e := range edits {
			places = append(places, fmt.Sprintf("%s:%d", e.Path, e.Place.File.Position(e.Place.Start, 0).Line))
		}
		assert.Equal(t, c.places, places, c.name)
		assertSameButNames(t, x, x.with(edits))
	}
}

func TestADefinitionOfAnotherHouseOfTheFolderStays(t *testing.T) {
	x := loft()
	x["other/house.malt"] = house
	x["other.malt"] = `use "other/house.malt"` + "\nprocess \"Other\" { steep in \"tub\" { } }\n"
	edits, err := In(x).Rename("pale.malt", x.at(t, "pale.malt", `"tub"`), "vat", nil)
	require.NoError(t, err)
	got := x.with(edits)
	assert.Equal(t, x["other.malt"], got["other.malt"])
	assert.Equal(t, x["other/house.malt"], got["other/house.malt"])
	assert.NotEqual(t, x["house.malt"], got["house.malt"])
}

func TestAPlaceThatTwoHousesShareMakesThemOne(t *testing.T) {
	x := texts{
		"steps.malt": "process \"Pale\" { steep in \"tub\" { } }\n",
		"a.malt":     "vessel \"tub\" { holds 20 l }\nuse \"steps.malt\"\n",
		"b.malt":     "vessel \"tub\" { holds 30 l }\nuse \"steps.malt\"\n",
	}
	edits, err := In(x).Rename("a.malt", x.at(t, "a.malt", `"tub"`), "vat", nil)
	require.NoError(t, err)
	assert.Len(t, edits, 3)
}

func TestARenameIsRefusedWithAReason(t *testing.T) {
	for _, c := range []struct {
		what       string
		file, name string
		to         string
		change     func(texts)
		says       string
	}{
		{"empty", "house.malt", `"tub"`, "", nil, "a name has at least one letter or sign"},
		{"blanks", "house.malt", `"tub"`, "  ", nil, "a name has at least one letter or sign"},
		{"a blank in front", "house.malt", `"tub"`, " vat", nil, `a blank at an end of " vat" would not be seen: leave it out`},
		{"a quote", "house.malt", `"tub"`, `2" vat`, nil, `" ends a name, and cannot stand in one`},
		{"a quote of print", "house.malt", `"tub"`, "the “vat", nil, "“ ends a name, and cannot stand in one"},
		{"two lines", "house.malt", `"tub"`, "a\nb", nil, "a name stands on one line"},
		{"no width", "house.malt", `"tub"`, "a\u200bb", nil, "the hidden character U+200B cannot stand in a name"},
		{"no text", "house.malt", `"tub"`, "a\xffb", nil, "this name is no UTF-8 text"},
		{"no name", "house.malt", "holds", "vat", nil, "no name stands here: the name of a grain, site, vessel, floor, kiln, scale, house, process or batch can be given another"},
		{"a file that is used", "pale.malt", `"house.malt"`, "vat", nil, "no name stands here: the name of a grain, site, vessel, floor, kiln, scale, house, process or batch can be given another"},
		{"not defined", "pale.malt", `"kiln"`, "oven", func(x texts) { x["house.malt"] = `vessel "tub" { holds 25 l }` }, `no file here defines kiln "kiln", so it is not known what else means it`},
		{"clash", "house.malt", `"tub"`, "vat", func(x texts) { x["pale.malt"] += "vessel \"vat\" { holds 30 l }\n" }, `another vessel is already called "vat": pale.malt, line 16`},
		{"asked for", "house.malt", `"tub"`, "vat", func(x texts) { x["pale.malt"] += "process \"p\" { steep in \"vat\" { } }\n" }, `pale.malt, line 16, names "vat" already, and would then mean this vessel`},
		{"a batch beside", "26-01.malt", `"26-01"`, "26-02", func(x texts) { x["26-02.malt"] = "batch \"26-02\" of \"Pale\" {\n}\n" }, `another batch is already called "26-02": 26-02.malt`},
		{"a kiln that is weighed in", "house.malt", `"tub"`, "kiln", nil, `a kiln is called "kiln" already, and 26-01.malt, line 5 would not say which of them is meant`},
		{"two that are weighed in", "26-01.malt", `"tub"`, "vat", func(x texts) { x["house.malt"] += "kiln \"tub\" { area 1 m2 }\n" }, `a vessel and a kiln are called "tub", and a record does not say which of them is meant: rename them by hand`},
		{"one of two that are weighed in", "house.malt", `"tub"`, "vat", func(x texts) { x["house.malt"] += "kiln \"tub\" { area 1 m2 }\n" }, `a vessel and a kiln are called "tub", and a record does not say which of them is meant: rename them by hand`},
		{"a statement that does not read", "house.malt", `"tub"`, "vat", func(x texts) { x["pale.malt"] += "soak ) 7 h\n" }, "pale.malt, line 16, does not read: put it right first, since the name may stand there too: "},
		{"a file beside that does not read", "house.malt", `"tub"`, "vat", func(x texts) { x["old.malt"] = "use ) \"house.malt\"\nprocess \"Old\" { steep in \"tub\" { } }\n" }, "old.malt, line 1, does not read: put it right first, since the name may stand there too: "},
		{"a file that is not there", "house.malt", `"tub"`, "vat", func(x texts) { x["pale.malt"] = "use \"gone.malt\"\n" + x["pale.malt"] }, "gone.malt cannot be read, and is used by 26-01.malt: the name may stand there too"},
	} {
		x := loft()
		if c.change != nil {
			c.change(x)
		}
		edits, err := In(x).Rename(c.file, x.at(t, c.file, c.name), c.to, nil)
		assert.Empty(t, edits, c.what)
		require.Error(t, err, c.what)
		assert.IsType(t, Refusal(""), err, c.what)
		assert.Contains(t, err.Error(), c.says, c.what)
	}
}

func TestAFileThatDoesNotReadAndHasNothingToDoWithItIsNoMatter(t *testing.T) {
	x := loft()
	x["draft.malt"] = "soak ) 7 h in \"tub\"\n"
	edits, err := In(x).Rename("house.malt", x.at(t, "house.malt", `"tub"`), "vat", nil)
	require.NoError(t, err)
	assert.NotEmpty(t, edits)
}

func TestTheSameNameChangesNothing(t *testing.T) {
	x := loft()
	edits, err := In(x).Rename("house.malt", x.at(t, "house.malt", `"tub"`), "tub", nil)
	require.NoError(t, err)
	assert.Empty(t, edits)
}

func TestANameWithAnySignInItIsRead(t *testing.T) {
	x := loft()
	for _, to := range []string{`barn\loft`, "pale", "26-01 # no. 2 {", "Süd °🌾", "in water", "‘a’"} {
		edits, err := In(x).Rename("house.malt", x.at(t, "house.malt", `"tub"`), to, nil)
		require.NoError(t, err, to)
		assertSameButNames(t, x, x.with(edits))
	}
	edits, err := In(x).Rename("house.malt", x.at(t, "house.malt", `"tub"`), "no\u00a02", nil)
	require.NoError(t, err)
	assert.Equal(t, "no 2", edits[0].New, "a blank that a program puts in is read as one")
}

// printed is the folder with its record pinned to what it is made by.
func printed(t *testing.T, from string) texts {
	x := loft()
	b := batchOf(x, "26-01.malt")
	require.NotNil(t, b.Process)
	x["26-01.malt"] = x["26-01.malt"][:len(record)-2] + fmt.Sprintf("  pinned %q%s\n}\n", fingerprint.Of(b.Process), from)
	require.True(t, fingerprint.Is(batchOf(x, "26-01.malt").Process, batchOf(x, "26-01.malt").Pinned.Print.Text))
	return x
}

func batchOf(x texts, file string) *model.Batch {
	h, _ := read.Load(file, []byte(x[file]), ".", In(x))
	return h.Batches[0]
}

func TestARecordStaysPinned(t *testing.T) {
	for _, name := range []string{`"Far field"`, `"tub"`, `"floor"`, `"kiln"`, `"Loft"`, `"kitchen"`} {
		x := printed(t, "")
		edits, err := In(x).Rename("house.malt", x.at(t, "house.malt", name), "New", nil)
		require.NoError(t, err, name)
		b := batchOf(x.with(edits), "26-01.malt")
		assert.True(t, fingerprint.Is(b.Process, b.Pinned.Print.Text), name)
	}
	x := printed(t, ` from "1a2b3c4"`)
	edits, err := In(x).Rename("pale.malt", x.at(t, "pale.malt", `"Pale"`), "New", nil)
	require.NoError(t, err)
	b := batchOf(x.with(edits), "26-01.malt")
	assert.True(t, fingerprint.Is(b.Process, b.Pinned.Print.Text))
	assert.Equal(t, "1a2b3c4", b.Pinned.Revision.Text)
}

func TestSignsThatTheirRevisionHoldsStay(t *testing.T) {
	x := printed(t, ` from "1a2b3c4"`)
	asked := ""
	edits, err := In(x).Rename("pale.malt", x.at(t, "pale.malt", `"Pale"`), "New", func(file string, b *model.Batch) bool {
		asked = file + " " + b.Pinned.Revision.Text
		return true
	})
	require.NoError(t, err)
	assert.Equal(t, "26-01.malt 1a2b3c4", asked)
	assert.Equal(t, batchOf(x, "26-01.malt").Pinned.Print.Text, batchOf(x.with(edits), "26-01.malt").Pinned.Print.Text)
}

func TestARecordOfAnEarlierTextIsNotCutOffFromIt(t *testing.T) {
	x := printed(t, ` from "1a2b3c4"`)
	x["pale.malt"] = x["pale.malt"] + "limits { bed-temperature at most 22 °C }\n"
	_, err := In(x).Rename("pale.malt", x.at(t, "pale.malt", `"Pale"`), "New", nil)
	assert.EqualError(t, err, `batch "26-01" was begun by an earlier text of "Pale", in revision 1a2b3c4 of git, and would not find it there by another name`)

	edits, err := In(x).Rename("house.malt", x.at(t, "house.malt", `"tub"`), "vat", nil)
	require.NoError(t, err, "the process is found by its name")
	assert.Equal(t, batchOf(x, "26-01.malt").Pinned.Print.Text, batchOf(x.with(edits), "26-01.malt").Pinned.Print.Text)
}
