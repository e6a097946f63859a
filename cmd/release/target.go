package main

import (
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

// chosen gives the targets of these names, all where there are none.
func chosen(names []string) ([]target, error) {
	if len(names) == 0 {
		return targets, nil
	}
	var known []string
	for _, t := range targets {
		known = append(known, t.String())
	}
	var list []target
	for _, t := range targets { // in their order, each once
		if slices.Contains(names, t.String()) {
			list = append(list, t)
		}
	}
	for _, name := range names {
		if slices.Contains(known, name) {
			continue
		}
		if meant, ok := nearest.Word(name, known); ok {
			return nil, fmt.Errorf("%s is no target of a release; did you mean %s?", name, meant)
		}
		return nil, fmt.Errorf("%s is no target of a release; they are %s", name, strings.Join(known, ", "))
	}
	return list, nil
}

func prefixed(prefix, text string) string {
	if text == "" {
		return ""
	}
	return prefix + text
}
