package main

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// kinds are the kinds of package, with where they differ.
var kinds = []kind{
	{format: "deb", zsh: "/usr/share/zsh/vendor-completions", licences: "/usr/share/doc/maltwright", joined: "copyright"},
	{format: "rpm", zsh: "/usr/share/zsh/site-functions", licences: "/usr/share/licenses/maltwright"},
}

type kind struct {
	format   string
	zsh      string // folder of completions
	licences string // folder
	joined   string // the one file of all licences; "" for two
}

// documents is where pages and examples go.
const documents = "/usr/share/doc/maltwright"

// description is what a package says of itself.
const description = `check and forecast malting processes written as text
The house process of a maltster - soaks and air rests, the germination band,
withering, the kiln and its moisture gates - is written as a plain text file.
The program finds what is unsafe or inconsistent in it before grain is spent,
forecasts when each step falls due and how moist the grain will be, and takes
the weighings of the batch in while it runs.`

// sheet is what nfpm is told of a package; it reads JSON as the YAML that it is.
type sheet struct {
	Name          string            `json:"name"`
	Arch          string            `json:"arch"`
	Platform      string            `json:"platform"`
	Version       string            `json:"version"`
	VersionSchema string            `json:"version_schema"`
	Section       string            `json:"section"`
	Priority      string            `json:"priority"`
	Maintainer    string            `json:"maintainer"`
	Description   string            `json:"description"`
	License       string            `json:"license"`
	Time          string            `json:"mtime"`
	Contents      []content         `json:"contents"`
	RPM           map[string]string `json:"rpm"`
}

// content is a file or a folder of a package.
type content struct {
	Source   string   `json:"src,omitempty"`
	To       string   `json:"dst"`
	Type     string   `json:"type,omitempty"` // dir for a folder
	FileInfo fileInfo `json:"file_info"`
}

type fileInfo struct {
	Mode  fs.FileMode `json:"mode"`
	Time  string      `json:"mtime"`
	Owner string      `json:"owner"`
	Group string      `json:"group"`
}

// packages writes the packages of a program for Linux; other systems have none.
func (r release) packages(ctx context.Context, t tools, p program, list []entry) error {
	if p.target.system != "linux" {
		return nil
	}
	for _, k := range kinds {
		files, err := k.installed(list, changes(r.commit, r.maintainer))
		if err != nil {
			return err
		}
		folder := filepath.Join(r.scratch, p.target.named(), k.format)
		s, err := r.sheet(p.target, k, files, folder)
		if err != nil {
			return err
		}
		config := folder + ".json"
		if err := os.WriteFile(config, s, 0o644); err != nil {
			return err
		}
		to := filepath.Join(r.dir, "maltwright-"+r.commit.version+"-"+p.target.named()+"."+k.format)
		env := []string{fmt.Sprintf("SOURCE_DATE_EPOCH=%d", r.commit.time.Unix())}
		if _, err := output(ctx, r.scratch, env, t.packager, "package", "--config", config, "--packager", k.format, "--target", to); err != nil {
			return err
		}
	}
	return nil
}

// sheet writes the files of a package into a folder, and tells nfpm of them.
func (r release) sheet(t target, k kind, files []entry, folder string) ([]byte, error) {
	when := r.commit.time.Format(time.RFC3339)
	summary, longer, _ := strings.Cut(description, "\n")
	s := sheet{
		Name: "maltwright", Arch: t.processor + t.least, Platform: t.system, Version: r.commit.version, VersionSchema: "semver",
		Section: "science", Priority: "optional", Maintainer: r.maintainer, Description: longer, License: "MIT", Time: when,
		RPM: map[string]string{"buildhost": "maltwright", "summary": summary},
	}
	if k.format == "deb" { // its first line is the summary, and its folders go when they are empty
		s.Description = description
	} else {
		for _, folder := range owned(files) {
			s.Contents = append(s.Contents, content{To: folder, Type: "dir", FileInfo: fileInfo{0o755, when, "root", "root"}})
		}
	}
	for _, e := range sorted(files) {
		at := filepath.Join(folder, filepath.FromSlash(e.name))
		if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
			return nil, err
		}
		if err := os.WriteFile(at, e.data, 0o644); err != nil {
			return nil, err
		}
		s.Contents = append(s.Contents, content{Source: at, To: e.name, FileInfo: fileInfo{e.mode, when, "root", "root"}})
	}
	return json.MarshalIndent(s, "", "  ")
}

// owned are the folders that hold nothing but files of the package.
func owned(files []entry) (list []string) {
	for _, e := range files {
		for dir := path.Dir(e.name); strings.Contains(dir, "/maltwright"); dir = path.Dir(dir) {
			list = append(list, dir)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// installed gives the files of an archive as they are installed: under the paths where systems look for them, the manual made
// small as man has it.
func (k kind) installed(list []entry, changes string) (files []entry, err error) {
	var terms []byte
	for _, e := range sorted(list) {
		folder, base := path.Split(e.name)
		to := path.Join(documents, e.name)
		switch top, _, _ := strings.Cut(e.name, "/"); {
		case e.mode&0o100 != 0:
			to = path.Join("/usr/bin", base)
		case e.name == "LICENSE" || e.name == "NOTICE":
			if to = path.Join(k.licences, base); k.joined != "" {
				terms = append(append(terms, e.data...), '\n')
				continue
			}
		case top == "man":
			if e.data, err = small(e.data); err != nil {
				return nil, err
			}
			to = path.Join("/usr/share", folder, base+".gz")
		case top == "completions":
			to = k.completion(base)
		}
		files = append(files, entry{to, e.mode, e.data})
	}
	if k.joined == "" {
		return files, nil
	}
	log, err := small([]byte(changes))
	return append(files, entry{path.Join(k.licences, k.joined), 0o644, terms}, entry{path.Join(documents, "changelog.gz"), 0o644, log}), err
}

// completion is where the script of a shell goes.
func (k kind) completion(name string) string {
	switch name {
	case completions["bash"]:
		return "/usr/share/bash-completion/completions/maltwright"
	case completions["zsh"]:
		return path.Join(k.zsh, name)
	}
	return path.Join("/usr/share/fish/vendor_completions.d", name)
}

// changes is what Debian wants to be told of a version; what changed stands in docs/changelog.md beside.
// Its readers want something in pointed brackets behind a name: who gives no address has the name of the project there.
func changes(c commit, maintainer string) string {
	if !strings.Contains(maintainer, "<") {
		maintainer += " <" + module + ">"
	}
	return fmt.Sprintf("maltwright (%s) unstable; urgency=medium\n\n  * See docs/changelog.md.\n\n -- %s  %s\n", strings.Replace(c.version, "-", "~", 1), maintainer, c.time.Format(time.RFC1123Z))
}

// small gives a text made small by gzip, with nothing of its name and time.
func small(text []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(text); err != nil {
		return nil, err
	}
	err = w.Close()
	return b.Bytes(), err
}
