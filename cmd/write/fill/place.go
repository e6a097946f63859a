package fill

import (
	"fmt"
	"slices"
	"strings"
	"text/template/parse"
)

// place is where in a page something stands.
type place struct {
	in      region
	element string // the tag that is open, or the element whose text this is
	attr    string // the attribute, in a value
	link    link   // how far an address in a value has come
}

type region int

const (
	inText  region = iota // where elements may stand
	inTag                 // behind the name of a tag or behind an attribute
	inValue               // in a value in double quotes
	inRaw                 // in the text of an element that holds no others
)

type link int

const (
	linkBegins link = iota
	linkPath        // behind the beginning of a path
	linkQuery       // behind a ? or a #
	linkGiven       // behind an address that was filled in
	linkRuns        // in what may run, or holds its data itself: nothing is filled into that
)

// rawElements are those whose text holds no elements.
var rawElements = []string{"title", "textarea", "style", "script"}

// addresses are the attributes that hold one.
var addresses = []string{"href", "src", "srcset", "action"}

// plain are the attributes whose value is nothing but text or a number. None of them runs anything or loads anything: content
// and http-equiv of a meta element could send the reader away, and rel of a link says what is made of what it loads.
var plain = []string{
	"alt", "aria-current", "aria-describedby", "aria-hidden", "aria-label", "aria-labelledby", "aria-live", "autocapitalize",
	"autocomplete", "class", "colspan", "d", "data-batch", "data-due", "data-entry", "data-folder", "data-head",
	"data-version", "datetime", "fill", "for", "height", "id", "inputmode", "lang", "loading", "media", "name", "role",
	"rows", "scope", "spellcheck", "stroke", "stroke-linecap", "stroke-linejoin", "stroke-width", "tabindex", "type", "value", "viewBox", "width",
}

// reader reads the parts of a page and says how each action of them is escaped.
type reader struct{ into *parsed }

// list reads nodes that stand behind each other.
func (r *reader) list(at place, list *parse.ListNode) (end place, err error) {
	if list == nil {
		return at, nil
	}
	for _, node := range list.Nodes {
		if at, err = r.node(at, node); err != nil {
			return at, err
		}
	}
	return at, nil
}

func (r *reader) node(at place, node parse.Node) (place, error) {
	switch node := node.(type) {
	case *parse.TextNode:
		return at.behind(string(node.Text))
	case *parse.ActionNode:
		if len(node.Pipe.Decl) > 0 {
			return at, nil
		}
		how, behind, err := at.fills()
		if err != nil {
			return at, fmt.Errorf("%s: %w", node, err)
		}
		r.into.escapes[node] = how
		return behind, nil
	case *parse.IfNode:
		return r.branch(at, &node.BranchNode, false)
	case *parse.WithNode:
		return r.branch(at, &node.BranchNode, false)
	case *parse.RangeNode:
		return r.branch(at, &node.BranchNode, true)
	case *parse.TemplateNode:
		if at != (place{}) {
			return at, fmt.Errorf("%s stands inside a tag", node)
		}
		if _, ok := r.into.parts[node.Name]; !ok {
			return at, fmt.Errorf("there is no part %q", node.Name)
		}
		return at, nil
	}
	return at, fmt.Errorf("%s is not known here", node)
}

// branch reads both ways of a branch, which must end at the same place.
func (r *reader) branch(at place, b *parse.BranchNode, again bool) (place, error) {
	one, err := r.list(at, b.List)
	if err != nil {
		return at, err
	}
	other, err := r.list(at, b.ElseList)
	switch {
	case err != nil:
		return at, err
	case one.attr == other.attr && one.in == inValue && other.in == inValue && one.link != other.link:
		link := linkGiven
		if one.link == linkRuns || other.link == linkRuns {
			link = linkRuns
		}
		one.link, other.link = link, link
	}
	if one != other || again && one != at {
		return at, fmt.Errorf("%s may end at two places", b.Pipe)
	}
	return one, nil
}

// behind is the place behind a text.
func (at place) behind(text string) (place, error) {
	fresh := at.in == inTag
	for text != "" {
		var err error
		switch at.in {
		case inText:
			at, text, err = at.openTag(text)
		case inTag:
			if fresh && !strings.ContainsRune(" \n/>", rune(text[0])) {
				return at, fmt.Errorf("an attribute does not begin with a space: %.20q", text)
			}
			at, text, err = at.attribute(text)
		case inValue:
			at, text = at.value(text)
		case inRaw:
			at, text, err = at.raw(text)
		}
		if err != nil {
			return at, err
		}
		fresh = false
	}
	return at, nil
}

func isName(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-'
}

func name(text string) string {
	end := strings.IndexFunc(text, func(c rune) bool { return c > 127 || !isName(byte(c)) })
	if end < 0 {
		return text
	}
	return text[:end]
}

// openTag goes on to behind the name of the next tag.
func (at place) openTag(text string) (place, string, error) {
	_, rest, found := strings.Cut(text, "<")
	if !found {
		return at, "", nil
	}
	if strings.HasPrefix(rest, "!") {
		doctype, behind, closed := strings.Cut(rest, ">")
		if !closed || !strings.EqualFold(doctype, "!doctype html") {
			return at, "", fmt.Errorf("neither a tag nor the beginning of a page: %.20q", rest)
		}
		return at, behind, nil
	}
	closing := strings.HasPrefix(rest, "/")
	rest = strings.TrimPrefix(rest, "/")
	tag := name(rest)
	if tag == "" {
		return at, "", fmt.Errorf("a tag without a name: %.20q", rest)
	}
	at = place{in: inTag, element: strings.ToLower(tag)}
	if closing {
		at.element = ""
	}
	return at, rest[len(tag):], nil
}

// attribute goes on behind the next attribute, into its value, or behind the tag.
func (at place) attribute(text string) (place, string, error) {
	switch c := text[0]; {
	case c == ' ' || c == '\n' || c == '/':
		return at, text[1:], nil
	case c == '>':
		if slices.Contains(rawElements, at.element) {
			return place{in: inRaw, element: at.element}, text[1:], nil
		}
		return place{}, text[1:], nil
	}
	attr := name(text)
	rest := text[len(attr):]
	switch {
	case attr == "":
		return at, "", fmt.Errorf("no attribute: %.20q", text)
	case strings.HasPrefix(rest, `="`):
		at.in, at.attr = inValue, attr
		return at, rest[2:], nil
	case strings.HasPrefix(rest, "="):
		return at, "", fmt.Errorf("the value of %s stands in no double quotes", attr)
	}
	return at, rest, nil
}

func (at place) value(text string) (place, string) {
	value, rest, closed := strings.Cut(text, `"`)
	if closed {
		return place{in: inTag, element: at.element}, rest
	}
	switch {
	case at.link == linkRuns:
	case at.link == linkBegins && harmless(value) != value:
		at.link = linkRuns
	case strings.ContainsAny(value, "?#"):
		at.link = linkQuery
	case at.link == linkBegins:
		at.link = linkPath
	}
	return at, ""
}

// raw goes on behind the tag that ends an element.
func (at place) raw(text string) (place, string, error) {
	_, rest, closed := strings.Cut(text, "</"+at.element+">")
	if !closed {
		return at, "", nil
	}
	return place{}, rest, nil
}

// fills tells how a value is escaped that is filled in at a place, and the place behind it.
func (at place) fills() (escape, place, error) {
	switch {
	case at.in == inText:
		return asText, at, nil
	case at.in == inRaw && at.element == "style":
		return asStyle, at, nil
	case at.in == inRaw && at.element != "script":
		return asRawText, at, nil
	case at.in == inValue && at.attr == "srcset" && at.link != linkBegins: // commas would part it otherwise
	case at.in == inValue && at.element == "script" && at.attr == "type": // that tells whether it runs
	case at.in == inValue && slices.Contains(addresses, at.attr):
		switch at.link {
		case linkBegins:
			at.link = linkGiven
			if at.attr == "srcset" {
				return asSources, at, nil
			}
			return asAddress, at, nil
		case linkPath:
			return asPath, at, nil
		case linkQuery:
			return asQuery, at, nil
		}
	case at.in == inValue && slices.Contains(plain, at.attr):
		return asValue, at, nil
	}
	return 0, at, fmt.Errorf("nothing can be filled in here (element %q, attribute %q)", at.element, at.attr)
}
