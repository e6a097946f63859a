package arrows

import (
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "maltwright/"

// pipeline is the order of the folders: a package imports only from those in front
// of it.
var pipeline = []string{
	"lang/regular", "lang/sorted", "lang/source", "lang/finding", "lang/nearest", "lang/quantity", "lang/vocabulary", "lang/calendar", "lang/syntax", "lang/value", "lang/model", "lang/read",
	"lang/layout", "lang/fingerprint", "lang/contrast", "lang/merge", "lang/outline", "lang/offer",
	"sim/work", "sim/powers", "sim/air", "sim/draught", "sim/drying", "sim/grain", "sim/steep", "sim/germinate", "sim/pneumatic", "sim/kiln", "sim/quality",
	"sim/reckon", "sim/forecast", "sim/anyhouse", "sim/seasons", "sim/visits", "sim/ensemble", "sim/infer/evidence", "sim/infer/sampler", "sim/infer/follow", "sim/infer/learn", "sim/outside/figure", "sim/outside", "sim/outside/fit",
	"check/profile", "check/usual", "check/tell", "check/records", "check/rules", "check/rules/newrule", "check", "check/mend",
	"cmd/arrows", "cmd/founding", "cmd/rewrite", "cmd/shelf", "cmd/answer", "cmd/answer/inspection", "cmd/answer/reference", "cmd/answer/outlook", "cmd/answer/timetable",
	"cmd/answer/progress", "cmd/answer/lessons", "cmd/answer/ledger", "cmd/answer/trace", "cmd/answer/effect", "cmd/answer/whatif", "cmd/answer/sums", "cmd/answer/noted", "cmd/answer/curve",
	"cmd/words", "cmd/write/malt", "cmd/write/key", "cmd/write/json", "cmd/write/csv", "cmd/write/text", "cmd/write/sarif", "cmd/write/shell", "cmd/write/ics", "cmd/write/fill", "cmd/write/html", "cmd/write/qr", "cmd/write/highlight", "cmd/write/man",
	"cmd/write/pdf",
	"cmd/chart", "cmd/chart/svg", "cmd/chart/term", "cmd/chart/html", "cmd/chart/onpaper", "cmd/chart/figures",
	"cmd/sheet", "cmd/sheet/html", "cmd/sheet/onpaper",
	"cmd/report", "cmd/report/html", "cmd/report/onpaper",
	"cmd/repository", "cmd/recall", "cmd/journal", "cmd/folder", "cmd/talk",
	"cmd/serve/guard", "cmd/serve", "cmd/serve/attacks",
	"cmd/margin", "cmd/lsp/wire", "cmd/lsp/desk", "cmd/lsp",
	"cmd/release",
	"cmd/maltwright",
}

// physics knows nothing of the language.
var physics = []string{"sim/work", "sim/powers", "sim/air", "sim/draught", "sim/drying", "sim/grain", "sim/steep", "sim/germinate", "sim/pneumatic", "sim/kiln", "sim/quality"}

// narrow are packages that may import of the module no more than this.
var narrow = map[string][]string{
	"lang/model": {"lang/quantity", "lang/source"},
	"sim/reckon": {"lang/quantity"},
}

// testOnly are for the tests of any package, and of use to nothing else.
var testOnly = []string{"lang/source/golden", "lang/source/declaration", "lang/finding/samples", "lang/source/spoil", "lang/vocabulary/invent", "lang/read/endless", "lang/syntax/pounds", "sim/drying/invent", "sim/infer/evidence/evidencetest", "cmd/answer/sample", "cmd/write/pdf/pdftest", "cmd/write/fill/filltest", "cmd/serve/browsertest", "cmd/chart/sample", "cmd/lsp/typist", "cmd/lsp/editors"}

// listed is what go list says of a package.
type listed struct {
	ImportPath           string
	Imports, TestImports []string
}

func (p listed) name() string { return strings.TrimPrefix(p.ImportPath, module) }

func packages(t *testing.T) []listed {
	t.Helper()
	list := exec.Command("go", "list", "-json=ImportPath,Imports,TestImports", "./...")
	list.Dir = "../.."
	out, err := list.Output()
	require.NoError(t, err)
	var all []listed
	for dec := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		err := dec.Decode(&p)
		if errors.Is(err, io.EOF) {
			return all
		}
		require.NoError(t, err)
		all = append(all, p)
	}
}

// own gives those of the imports that are packages of the module.
func own(imports []string) []string {
	var list []string
	for _, path := range imports {
		if name, ok := strings.CutPrefix(path, module); ok {
			list = append(list, name)
		}
	}
	return list
}

func TestImportsPointBackAlongThePipeline(t *testing.T) {
	all := packages(t)
	require.Greater(t, len(all), 10)
	for _, p := range all {
		if slices.Contains(testOnly, p.name()) {
			continue
		}
		at := slices.Index(pipeline, p.name())
		if !assert.GreaterOrEqual(t, at, 0, "%s has no place in the pipeline", p.name()) {
			continue
		}
		for _, name := range own(p.Imports) {
			assert.Contains(t, pipeline[:at], name, "%s imports %s", p.name(), name)
		}
		for _, name := range own(p.TestImports) { // a test from outside may drive what is built on the package
			if !slices.Contains(testOnly, name) {
				assert.Contains(t, pipeline[:at], name, "a test in %s imports %s", p.name(), name)
			}
		}
	}
}

func TestNoPackageIsCalledByWhatItIsNot(t *testing.T) {
	for _, p := range packages(t) {
		name := p.ImportPath[strings.LastIndex(p.ImportPath, "/")+1:]
		assert.NotContains(t, []string{"util", "utils", "common", "helper", "helpers", "types", "base"}, name, p.ImportPath)
	}
}

// physics knows nothing of the language, and what is narrow imports what it may.
func TestPhysicsAndTheTypedProcessStandAlone(t *testing.T) {
	seen := 0
	for _, p := range packages(t) {
		may, isNarrow := narrow[p.name()]
		if slices.Contains(physics, p.name()) {
			may, isNarrow = physics, true
		}
		if !isNarrow {
			continue
		}
		seen++
		for _, name := range own(p.Imports) {
			assert.Contains(t, may, name, "%s imports %s", p.name(), name)
		}
	}
	assert.Equal(t, len(physics)+len(narrow), seen)
}

func TestAForecastNeedsNoParserAndAProgramNoTests(t *testing.T) {
	for _, path := range goList(t, "-deps", "./sim/forecast") {
		assert.NotContains(t, path, "participle")
		assert.NotEqual(t, module+"lang/syntax", path)
	}
	for _, path := range goList(t, "-deps", "./cmd/maltwright") {
		assert.NotContains(t, testOnly, strings.TrimPrefix(path, module), "a package for tests is in the program")
	}
}
