package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/nearest"
)

// target is a system and a processor that programs are built for.
type target struct {
	system, processor string // as Go calls them
	least             string // the least processor of its kind: the value of GOARM
}

// targets are those of a release. The programs of 32 bits for ARM ask for version 6 with a unit for floating point,
// which the smallest boards that people keep beside a kiln have.
var targets = []target{
	{"linux", "amd64", ""}, {"linux", "arm64", ""}, {"linux", "arm", "6"},
	{"darwin", "amd64", ""}, {"darwin", "arm64", ""},
	{"windows", "amd64", ""}, {"windows", "arm64", ""},
}

// String names a target as Go does.
func (t target) String() string { return t.system + "/" + t.processor }

// named names it as people do, in the name of a file.
func (t target) named() string {
	system := t.system
	if system == "darwin" {
		system = "macos"
	}
	return system + "-" + t.processor + prefixed("v", t.least)
}

// executable is the name of its program.
func (t target) executable() string {
	if t.system == "windows" {
		return "maltwright.exe"
	}
	return "maltwright"
}

// env are the settings of the environment by which Go builds for it, and by nothing else.
func (t target) env() []string {
	env := []string{"GOOS=" + t.system, "GOARCH=" + t.processor, "CGO_ENABLED=0", "GOFLAGS=", "GOEXPERIMENT=", "GOWORK=off", "GOAMD64=v1", "GOARM64=v8.0"}
	if t.least != "" {
		env = append(env, "GOARM="+t.least)
	}
	return env
}

// chosen gives the targets of these names, all where none is asked for. A target has two names, that of Go and that of its files:
// linux/arm and linux/armv6.
func chosen(names []string) ([]target, error) {
	if names == nil {
		return targets, nil
	}
	byName, known := map[string]target{}, []string{}
	for _, t := range targets {
		for _, name := range []string{t.String(), strings.Replace(t.named(), "-", "/", 1), t.named()} {
			if _, is := byName[name]; !is {
				byName[name], known = t, append(known, name)
			}
		}
	}
	asked := map[target]bool{}
	for _, name := range names {
		t, is := byName[strings.TrimSpace(name)]
		if !is {
			return nil, unknown(name, known)
		}
		asked[t] = true
	}
	if len(asked) == 0 {
		return nil, errors.New("--only names no target; " + theyAre())
	}
	return slices.DeleteFunc(slices.Clone(targets), func(t target) bool { return !asked[t] }), nil // in their order, each once
}

// unknown tells of a name that is that of no target.
func unknown(name string, known []string) error {
	if strings.TrimSpace(name) == "" {
		return errors.New("--only names no target; " + theyAre())
	}
	if meant, ok := nearest.Word(name, known); ok {
		return fmt.Errorf("%s is no target of a release; did you mean %s?", name, meant)
	}
	return fmt.Errorf("%s is no target of a release; %s", name, theyAre())
}

// theyAre lists the targets.
func theyAre() string {
	var names []string
	for _, t := range targets {
		names = append(names, t.String())
	}
	return "they are " + strings.Join(names, ", ")
}

func prefixed(prefix, text string) string {
	if text == "" {
		return ""
	}
	return prefix + text
}
