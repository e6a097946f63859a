// Package fill fills pages of HTML with what an answer says. The pages are written in the language of html/template of the
// standard library, of which it takes what ours need, and gives the same bytes, to which its tests hold it. That library
// looks up methods by names that stand in a page, and a program that does so keeps every method of every type: ours
// would be almost twice as large. Here a page reads fields, elements and functions, never methods.
//
// Whatever is filled in is escaped for the place where it stands. A page that would fill in something at a place that is not
// known to be safe does not parse: a value without quotes, the name of an attribute or of a tag, an attribute that is not in
// the list, a script, a comment.
package fill

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"reflect"
	"strings"
	"sync"
	"text/template/parse"
)

// HTML is text that is written as it stands where elements may stand. It comes from another page, or from a drawing.
type HTML string

// CSS is a style sheet, or a part of one, that is written as it stands in a style element.
type CSS string

// Funcs are what a page may call, each by its name. A function gives one value.
type Funcs map[string]any

// Page is a page, or several that share parts.
type Page struct {
	texts  []string
	funcs  Funcs
	parsed func() (*parsed, error)
}

// parsed are the parts of a page by their names, and how each action of them is escaped.
type parsed struct {
	parts   map[string]*parse.ListNode
	escapes map[*parse.ActionNode]escape
}

// whole is the name of what stands outside all parts.
const whole = ""

// New makes a page of texts. They are parsed when it is first asked for.
func New(funcs Funcs, texts ...string) *Page {
	p := &Page{texts: texts, funcs: maps.Clone(builtin)}
	maps.Copy(p.funcs, funcs)
	p.parsed = sync.OnceValues(p.parse)
	return p
}

// Texts are what the page was made of.
func (p *Page) Texts() []string { return p.texts }

// Funcs are the functions that its texts may call.
func (p *Page) Funcs() Funcs { return p.funcs }

// Parses tells what is wrong with the texts, if anything.
func (p *Page) Parses() error {
	_, err := p.parsed()
	return err
}

func (p *Page) parse() (*parsed, error) {
	known := map[string]any{"and": true, "or": true}
	for name, f := range p.funcs {
		known[name] = f
	}
	out := &parsed{map[string]*parse.ListNode{}, map[*parse.ActionNode]escape{}}
	for _, text := range p.texts {
		trees, err := parse.Parse(whole, text, "", "", known)
		if err != nil {
			return nil, err
		}
		for name, tree := range trees {
			if _, twice := out.parts[name]; twice && name != whole {
				return nil, fmt.Errorf("%q is defined twice", name)
			}
			out.parts[name] = tree.Root
		}
	}
	for name, root := range out.parts {
		end, err := (&reader{out}).list(place{}, root)
		if err == nil && end != (place{}) {
			err = errors.New("it ends inside a tag or an element")
		}
		if err != nil {
			return nil, fmt.Errorf("part %q: %w", name, err)
		}
	}
	return out, nil
}

// Write writes what stands outside all parts.
func (p *Page) Write(w io.Writer, data any) error { return p.WritePart(w, whole, data) }

// WritePart writes a part of the page. Nothing is written where it fails.
func (p *Page) WritePart(w io.Writer, name string, data any) error {
	parsed, err := p.parsed()
	if err != nil {
		return err
	}
	root, ok := parsed.parts[name]
	if !ok {
		return fmt.Errorf("there is no part %q", name)
	}
	f := &filling{parsed: parsed, funcs: p.funcs}
	if err := f.part(root, reflect.ValueOf(data)); err != nil {
		return err
	}
	_, err = io.Copy(w, strings.NewReader(f.out.String()))
	return err
}
