package command

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os/exec"
	"path"
	"path/filepath"
	"strings"

	"maltwright/check"
	"maltwright/check/report"
	"maltwright/lang/contrast"
	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/lang/syntax"
	"maltwright/sim/forecast"
)

// Contrast compares two seasons by meaning.
type Contrast struct {
	Old    string `arg:"" help:"The earlier file, or REV:path in a git repository."`
	New    string `arg:"" help:"The later file, or REV:path."`
	Format string `enum:"text,json" default:"text" help:"How to write: text or json."`
	Brief  bool   `help:"Only what changed in the process, without the forecasts."`
}

// Help is the longer help of the command.
func (Contrast) Help() string {
	return `What changed is told by meaning: a soak that got longer, a gate that went, a
stage that moved. 59 °F and 15 °C are the same; comments and layout do not count,
and what a file uses does. Then both are forecast, side by side.

Examples:

  maltwright contrast pale-2026.malt pale-2027.malt
  maltwright contrast HEAD~1:examples/pale.malt examples/pale.malt
  maltwright contrast --brief HEAD:pale.malt pale.malt

Exit code: 0 they mean the same, 1 they differ, 2 the command line cannot be
understood, 3 a file cannot be read.`
}

// season is one side of a comparison.
type season struct {
	name  string
	trees []*syntax.Tree
	found []finding.Finding
	house *process.House
}

// Run compares and writes.
func (c Contrast) Run(w *World) error {
	old, err := w.season(c.Old)
	if err != nil {
		return err
	}
	new, err := w.season(c.New)
	if err != nil {
		return err
	}
	changes := contrast.Files(old.trees, new.trees)
	var effects []effect
	if !c.Brief {
		effects = effectsOf(old, new)
	}
	if c.Format == "json" {
		err = contrastJSON(w, changes, effects)
	} else {
		err = contrastText(w, old, new, changes, effects)
	}
	if err != nil {
		return failed("cannot write: %v", err)
	}
	if len(changes) > 0 {
		return errFindings
	}
	return nil
}

// season reads one side, from the disk or through git.
func (w World) season(arg string) (season, error) {
	in, reader, done, err := w.side(arg)
	if err != nil {
		return season{}, err
	}
	defer done()
	s := season{name: arg}
	r := check.File(in.name, in.text, in.dir, reader, check.Options{})
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
	rev, p, isRev := strings.Cut(arg, ":")
	files, err := w.gather([]string{arg}, "")
	if err == nil && len(files) == 1 {
		root, err := process.OpenRoot(files[0].root)
		if err != nil {
			return input{}, nil, nil, failed("%s: %s", files[0].root, plainError(err))
		}
		return files[0], root, func() { root.Close() }, nil
	}
	if !isRev || rev == "" || filepath.IsAbs(arg) {
		if err == nil {
			err = usage("%s is a folder; contrast takes files", arg)
		}
		return input{}, nil, nil, err
	}
	g, err := w.revision(rev, p)
	if err != nil {
		return input{}, nil, nil, err
	}
	text, err := g.Read(path.Base(g.file))
	if err != nil {
		return input{}, nil, nil, failed("%s: %v", arg, err)
	}
	return input{name: arg, text: text, dir: "."}, g, func() {}, nil
}

// revision reads files of a commit, below the folder of one of them.
type revision struct{ folder, rev, file string }

func (w World) revision(rev, p string) (revision, error) {
	if strings.HasPrefix(rev, "-") {
		return revision{}, usage("%q is no revision", rev)
	}
	prefix, err := git(w.Folder, "rev-parse", "--show-prefix")
	if err != nil {
		return revision{}, failed("%s: this folder is not in a git repository, and there is no such file", rev+":"+p)
	}
	full := path.Join(strings.TrimSpace(string(prefix)), filepath.ToSlash(p))
	if _, err := git(w.Folder, "rev-parse", "--verify", "--quiet", rev+"^{commit}"); err != nil {
		return revision{}, failed("%s: git knows no revision %q", rev+":"+p, rev)
	}
	return revision{w.Folder, rev, full}, nil
}

// Read gives a file of the commit by its path below the folder of the first one.
func (r revision) Read(name string) ([]byte, error) {
	full := path.Join(path.Dir(r.file), name)
	text, err := git(r.folder, "show", r.rev+":"+full)
	if err != nil {
		return nil, fmt.Errorf("%s holds no %s", r.rev, full)
	}
	return text, nil
}

func git(folder string, args ...string) ([]byte, error) {
	cmd := exec.Command("git", args...)
	cmd.Dir = folder
	var out bytes.Buffer
	cmd.Stdout = &out
	err := cmd.Run()
	return out.Bytes(), err
}

// effect is one figure on both sides.
type effect struct {
	Process string `json:"process"`
	What    string `json:"what"`
	Old     string `json:"old"`
	New     string `json:"new"`
}

// effectsOf forecasts the processes that stand on both sides under one name, or the
// only one of each.
func effectsOf(old, new season) []effect {
	var out []effect
	for _, p := range new.house.Processes {
		q := partner(old.house, p, len(new.house.Processes))
		if q == nil {
			continue
		}
		a, errA := forecast.Run(q, forecast.Options{})
		b, errB := forecast.Run(p, forecast.Options{})
		if errA != nil || errB != nil {
			continue
		}
		for _, f := range figures(a, b) {
			if f.Old != f.New {
				f.Process = p.Name
				out = append(out, f)
			}
		}
	}
	return append(out, findingEffects(old.found, new.found)...)
}

func partner(h *process.House, p *process.Process, others int) *process.Process {
	for _, q := range h.Processes {
		if q.Name == p.Name {
			return q
		}
	}
	if len(h.Processes) == 1 && others == 1 {
		return h.Processes[0]
	}
	return nil
}

// figures are what is told of two forecasts.
func figures(a, b *forecast.Forecast) []effect {
	x, y := &a.Totals, &b.Totals
	out := []effect{
		{What: "steep-out", Old: lasting(x.SteepOut), New: lasting(y.SteepOut)},
		{What: "steep-out moisture", Old: percentText(x.SteepOutMoisture), New: percentText(y.SteepOutMoisture)},
		{What: "total time", Old: lasting(x.Total), New: lasting(y.Total)},
	}
	for i := range max(len(a.Gates), len(b.Gates)) {
		out = append(out, gateEffect(a.Gates, b.Gates, i))
	}
	return append(out,
		effect{What: "final moisture", Old: percentText(x.FinalMoisture), New: percentText(y.FinalMoisture)},
		effect{What: "malt", Old: kilograms(x.Malt), New: kilograms(y.Malt)},
		effect{What: "yield as is", Old: percentText(x.Yield), New: percentText(y.Yield)},
		effect{What: "diastatic enzymes kept", Old: percentText(x.Quality.Diastatic), New: percentText(y.Quality.Diastatic)},
		effect{What: "colour, EBC", Old: decimals(x.Quality.Colour, 1), New: decimals(y.Quality.Colour, 1)},
		effect{What: "heat of the kiln", Old: kilowattHours(x.KilnEnergy), New: kilowattHours(y.KilnEnergy)},
	)
}

func gateEffect(a, b []forecast.Gate, i int) effect {
	tell := func(list []forecast.Gate) (string, string) {
		switch {
		case i >= len(list):
			return "", "-"
		case math.IsNaN(list[i].Reached):
			return string(list[i].Stage) + ": " + list[i].Text, "not met"
		}
		return string(list[i].Stage) + ": " + list[i].Text, "after " + lasting(list[i].Reached)
	}
	nameA, old := tell(a)
	nameB, new := tell(b)
	name := nameB
	if nameB == "" {
		name = nameA
	} else if nameA != nameB && nameA != "" {
		name = nameA + " / " + nameB
	}
	return effect{What: name, Old: old, New: new}
}

// findingEffects tells which findings appeared and which went, by rule.
func findingEffects(old, new []finding.Finding) []effect {
	count := map[string][2]int{}
	var order []string
	for side, list := range [][]finding.Finding{old, new} {
		for _, f := range list {
			key := f.Severity.String() + " " + f.Rule
			n, seen := count[key]
			if !seen {
				order = append(order, key)
			}
			n[side]++
			count[key] = n
		}
	}
	var out []effect
	for _, key := range order {
		if n := count[key]; n[0] != n[1] {
			out = append(out, effect{What: key, Old: plural(n[0], "finding"), New: plural(n[1], "finding")})
		}
	}
	return out
}

func contrastText(w *World, old, new season, changes []contrast.Change, effects []effect) error {
	p := sheet{World: w}
	if len(changes) == 0 {
		p.line("%s and %s mean the same", report.Safe(old.name), report.Safe(new.name))
	} else {
		p.line("%s", p.bold(fmt.Sprintf("%s from %s to %s", plural(len(changes), "change"), report.Safe(old.name), report.Safe(new.name))))
	}
	last := ""
	for _, c := range changes {
		if at := strings.Join(c.Path, ", "); at != last {
			p.line("%s", report.Safe(at))
			last = at
		}
		for _, text := range changeLines(c) {
			p.para(text[0], "%s", report.Safe(text[1]))
		}
	}
	if len(effects) > 0 {
		p.line("")
		p.line("%s", p.bold("what the forecasts make of it"))
		for _, e := range effects {
			p.line("  %-44s %14s  %s", head(report.Safe(e.What), 44), e.Old, e.New)
		}
	}
	_, err := fmt.Fprint(w.Out, p.b.String())
	return err
}

// changeLines tells a change: a label and what it says, a line each.
func changeLines(c contrast.Change) [][2]string {
	label := "  " + c.Kind.String()
	switch c.Kind {
	case contrast.Added, contrast.Moved:
		return [][2]string{{label, c.New.Text}}
	case contrast.Removed:
		return [][2]string{{label, c.Old.Text}}
	}
	out := [][2]string{{label, c.New.Text}}
	for _, part := range c.Parts {
		what := strings.TrimSpace(part.What + " ")
		was := strings.TrimSpace(what + " " + part.Old)
		switch {
		case part.Old == "":
			was = "nothing of " + what
		case part.New == "":
			was = "also " + was
		}
		out = append(out, [2]string{"  was", was})
	}
	return out
}

// head cuts a text to so many characters.
func head(text string, n int) string {
	if r := []rune(text); len(r) > n {
		return string(r[:n-1]) + "…"
	}
	return text
}

type jsonChange struct {
	Kind  string     `json:"kind"`
	Path  []string   `json:"path"`
	Old   string     `json:"old,omitempty"`
	New   string     `json:"new,omitempty"`
	Parts []jsonPart `json:"parts,omitempty"`
}

type jsonPart struct {
	What string `json:"what"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

func contrastJSON(w *World, changes []contrast.Change, effects []effect) error {
	out := struct {
		Changes []jsonChange `json:"changes"`
		Effects []effect     `json:"effects"`
	}{[]jsonChange{}, append([]effect{}, effects...)}
	for _, c := range changes {
		j := jsonChange{Kind: c.Kind.String(), Path: append([]string{}, c.Path...), Old: c.Old.Text, New: c.New.Text}
		for _, part := range c.Parts {
			j.Parts = append(j.Parts, jsonPart(part))
		}
		out.Changes = append(out.Changes, j)
	}
	enc := json.NewEncoder(w.Out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}
