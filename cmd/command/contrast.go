package command

import (
	"path"
	"path/filepath"
	"strings"

	"maltwright/check"
	"maltwright/check/report"
	"maltwright/lang/contrast"
	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/lang/syntax"
)

// Contrast compares two seasons by meaning.
type Contrast struct {
	Old    string `arg:"" help:"The earlier file, or REV:path in a git repository."`
	New    string `arg:"" help:"The later file, or REV:path."`
	Format string `enum:"text,json,html" default:"text" help:"How to write: text, json, or html (one page that needs nothing else)."`
	Brief  bool   `help:"Only what changed in the process, without the forecasts."`
}

// Help is the longer help of the command.
func (Contrast) Help() string {
	return `What changed is told by meaning: a soak that got longer, a gate that went, a
stage that moved. 59 °F and 15 °C are the same; comments and layout do not count,
and what a file uses does. Then both are forecast, side by side.

REV is a commit, branch or tag of git, and the path behind it is counted from the
folder you are in; what the file uses is read from the same commit.

Examples:

  maltwright contrast pale-2026.malt pale-2027.malt
  maltwright contrast HEAD~1:examples/pale.malt examples/pale.malt
  maltwright contrast --brief HEAD:pale.malt pale.malt
  maltwright contrast --format html old.malt new.malt > seasons.html

Exit code: 0 they mean the same, 1 they differ, 2 the command line cannot be
understood, 3 a file cannot be read.`
}

// season is one side of a comparison.
type season struct {
	name  string // as it was given
	file  string // the name of the file itself in places
	trees []*syntax.Tree
	found []finding.Finding
	house *process.House
}

// comparison is two seasons and what is otherwise.
type comparison struct {
	old, new season
	changes  []contrast.Change
	figures  []figure
	findings []findingChange
	unable   []string // why a forecast could not be compared
}

// Run compares and writes.
func (c Contrast) Run(w *World) error {
	x, err := c.compared(w)
	if err != nil {
		return err
	}
	if err := contrastFormats[c.Format](w, x); err != nil {
		return failed("cannot write: %v", err)
	}
	if len(x.changes) > 0 {
		return errFindings
	}
	return nil
}

// compared reads both sides and compares them.
func (c Contrast) compared(w *World) (*comparison, error) {
	var x comparison
	var err error
	if x.old, err = w.season(c.Old, c.Brief); err != nil {
		return nil, err
	}
	if x.new, err = w.season(c.New, c.Brief); err != nil {
		return nil, err
	}
	x.changes = contrast.Files(x.old.trees, x.new.trees)
	if !c.Brief {
		x.forecasts()
		x.findings = findingChanges(x.old.found, x.new.found)
	}
	return &x, nil
}

var contrastFormats = map[string]func(*World, *comparison) error{
	"text": contrastText, "json": contrastJSON, "html": contrastHTML,
}

// season reads one side, from the disk or through git.
func (w World) season(arg string, brief bool) (season, error) {
	in, reader, done, err := w.side(arg)
	if err != nil {
		return season{}, err
	}
	defer done()
	s := season{name: arg, file: in.name}
	r := check.File(in.name, in.text, in.dir, reader, check.Options{NoForecast: brief})
	s.house, s.found = r.House, r.Findings
	for _, f := range r.House.Files {
		tree, found := syntax.Parse(f)
		if worst, any := finding.Worst(found); any && worst >= finding.Fault {
			_ = report.Lines(w.Err, found, report.Options{Folder: w.Folder})
			return s, failed("%s does not read; put that right first", f.Name())
		}
		s.trees = append(s.trees, tree)
	}
	return s, nil
}

// side opens one side: a file, or REV:path where no such file is there.
func (w World) side(arg string) (input, process.Reader, func(), error) {
	rev, name, isRev := strings.Cut(arg, ":")
	files, err := w.gather([]string{arg}, "")
	if err == nil && len(files) == 1 && (arg == "-" || files[0].path == w.at(arg)) {
		root, err := process.OpenRoot(files[0].root)
		if err != nil {
			return input{}, nil, nil, failed("%s: %s", files[0].root, plainError(err))
		}
		return files[0], root, func() { root.Close() }, nil
	}
	if !isRev || rev == "" || name == "" || filepath.IsAbs(arg) {
		if err == nil {
			err = usage("%s is a folder; contrast takes files", arg)
		}
		return input{}, nil, nil, err
	}
	r, err := w.revision(rev, name)
	if err != nil {
		return input{}, nil, nil, err
	}
	text, err := r.Read(path.Base(r.file))
	if err != nil {
		return input{}, nil, nil, failed("%s: revision %s holds no file %s", arg, rev, r.file)
	}
	return input{name: arg, text: text, dir: "."}, r, func() {}, nil
}
