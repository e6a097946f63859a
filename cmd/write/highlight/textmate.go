package highlight

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Scopes of a grammar, by the conventions of TextMate, without the language behind them.
const (
	scopeComment    = "comment.line.number-sign"
	scopeInclude    = "keyword.control.import"
	scopeDefinition = "storage.type"
	scopeAct        = "keyword.control"
	scopeFact       = "support.type.property-name"
	scopeClause     = "keyword.other"
	scopeBound      = "keyword.operator.comparison"
	scopeAnd        = "keyword.operator.logical"
	scopeRange      = "keyword.operator.range"
	scopeNumber     = "constant.numeric"
	scopeUnit       = "keyword.other.unit"
	scopeDate       = "constant.other.date"
	scopeTime       = "constant.other.time"
	scopePlace      = "variable.language"
	scopeChoice     = "constant.language"
	scopeOther      = "variable.other"
	scopeString     = "string.quoted.double"
	scopeStringEnds = "punctuation.definition.string"
	scopeEscape     = "constant.character.escape"
	scopeName       = "entity.name.type"
	scopeBlock      = "punctuation.section.block"
	scopeEnd        = "punctuation.terminator.statement"
	scopeStray      = "invalid.illegal"
)

const language = ".malt"

// grammar is a grammar file. Its fields are those that TextMate names.
type grammar struct {
	Comment   string   `json:"comment"`
	Name      string   `json:"name"`
	ScopeName string   `json:"scopeName"`
	FileTypes []string `json:"fileTypes"`
	Patterns  []rule   `json:"patterns"`
}

// rule colours what matches, or what stands between two matches. A place in its captures is
// that of a pair of brackets.
type rule struct {
	Name     string          `json:"name,omitempty"`
	Match    string          `json:"match,omitempty"`
	Begin    string          `json:"begin,omitempty"`
	End      string          `json:"end,omitempty"`
	Captures map[string]rule `json:"captures,omitempty"`
	Starts   map[string]rule `json:"beginCaptures,omitempty"`
	Ends     map[string]rule `json:"endCaptures,omitempty"`
	Patterns []rule          `json:"patterns,omitempty"`
}

// TextMate gives the grammar as JSON. Its patterns are of Oniguruma, which has look-behind of
// a fixed width and none of an open one: so a "to" between two ends of a range is taken along
// with the value in front of it.
func TextMate() []byte {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	g := grammar{
		Comment:   "Made from the vocabulary of the language by the tests of cmd/write/highlight; do not edit.",
		Name:      "Maltwright process",
		ScopeName: "source" + language,
		FileTypes: []string{"malt"},
		Patterns:  Collect().rules(),
	}
	if err := enc.Encode(g); err != nil {
		panic(err) // texts alone can always be written
	}
	return out.Bytes()
}

// rules are tried in their order at each place.
func (w Words) rules() []rule {
	return []rule{
		named(scopeComment, `#.*$`),
		w.definition(),
		first(scopeInclude, w.Includes), first(scopeAct, w.Acts), first(scopeFact, w.Facts), first(scopeAct, w.Definitions),
		{Match: starts + `(` + letter + wordRest + `)`, Captures: scopes(scopeOther)},
		w.numbered(), w.date(), w.clock(), w.namedTime(), w.quantity(),
		text(),
		named(scopeBound, among(w.Signs)),
		named(scopeBound, whole(w.Bounds)),
		named(scopeClause, whole(w.Clauses)),
		named(scopeAnd, whole([]string{vocabulary.And})),
		named(scopePlace, whole(w.Places)),
		named(scopeChoice, whole(w.Choices)),
		named(scopeOther, letter+wordRest),
		named(scopeBlock+".begin", `\{`), named(scopeBlock+".end", `\}`), named(scopeEnd, `;`),
		named(scopeStray, `[^\s\x{feff}\x{00a0}\x{202f}\x{2009}]`),
	}
}

// Parts of patterns. A word is of the letters that the lexer takes for one.
const (
	blank    = `[ \t\x{00a0}\x{202f}\x{2009}]`
	letter   = `[\p{L}_]`
	wordRest = `[\p{L}\d_'-]*`
	notWord  = `(?![\p{L}\d_'-])`
	notIn    = `(?<![\p{L}\d_'-])`
	starts   = `(?:^\x{feff}?|(?<=[{};]))` + blank + `*`
	quote    = `["“„]`
	unquote  = `["”“]`
)

func named(scope, match string) rule { return rule{Name: scope + language, Match: match} }

// scopes names the brackets of a pattern one after another; "" names none.
func scopes(list ...string) map[string]rule {
	m := map[string]rule{}
	for i, scope := range list {
		if scope != "" {
			m[strconv.Itoa(i+1)] = rule{Name: scope + language}
		}
	}
	return m
}

// among matches one of the texts.
func among(list []string) string {
	parts := make([]string, len(list))
	for i, text := range list {
		parts[i] = strings.ReplaceAll(regexp.QuoteMeta(text), " ", blank+"+")
	}
	return `(?:` + strings.Join(parts, "|") + `)`
}

// whole matches one of the words, and no part of a longer one.
func whole(list []string) string { return notIn + among(list) + notWord }

// first matches a word that begins a statement.
func first(scope string, list []string) rule {
	return rule{Match: starts + `(` + among(list) + `)` + notWord, Captures: scopes(scope)}
}

func (w Words) definition() rule {
	captures := scopes(scopeDefinition, scopeString, scopeStringEnds+".begin", scopeName, scopeStringEnds+".end")
	// what has patterns of its own stands in nothing but what it names
	captures["4"] = rule{Name: scopeString + language + " " + scopeName + language, Patterns: []rule{escape()}}
	return rule{
		Match:    starts + `(` + among(w.Definitions) + `)` + blank + `*((` + quote + `)((?:\\.|[^"”“\\])*)(` + unquote + `))`,
		Captures: captures,
	}
}

func escape() rule { return named(scopeEscape, `\\.`) }

// text ends with its line where it is not closed.
func text() rule {
	return rule{
		Name: scopeString + language, Begin: quote, End: unquote + `|$`,
		Starts:   map[string]rule{"0": {Name: scopeStringEnds + ".begin" + language}},
		Ends:     map[string]rule{"0": {Name: scopeStringEnds + ".end" + language}},
		Patterns: []rule{escape()},
	}
}

// numbered takes the number of a step and the "to" behind it, which opens a clause there.
func (w Words) numbered() rule {
	return rule{
		Match:    `(?<=` + strings.Join(w.Numbered, `|`) + `)(` + blank + `+)(` + among(w.Steps) + `)` + blank + `+(\d+)` + blank + `+(` + vocabulary.To + `)` + notWord,
		Captures: scopes("", scopeChoice, scopeNumber, scopeClause),
	}
}

// fractions are the signs that are numbers by themselves.
func fractions() string {
	var b strings.Builder
	for r := '\u00bc'; r < '\u2190'; r++ {
		if quantity.IsFraction(r) {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// number is a number without its sign.
func number() string {
	f := `[` + fractions() + `]`
	return `(?:\d+(?:[.,/]\d+|[ ]+\d+/\d+|[ ]*` + f + `)?|(?<![\p{L}\d.])\.\d+|` + f + `)`
}

// further matches a "to", or a dash, between two ends of a range, where a value stands before it.
func (w Words) further() string {
	value := `[-\x{2212}]?(?:\d|\.\d|[` + fractions() + `])`
	return `(?:` + blank + `+(` + vocabulary.To + `)(?=` + blank + `+(?:` + value + `|` + among(w.Times) + notWord + `))` +
		`|` + blank + `*([-–—])(?=` + blank + `*` + value + `))?`
}

// quantity takes a number with its unit, known or not. A word that opens a clause is a unit
// only where nothing follows that it could lead to: 9 in, but 7 h in water.
func (w Words) quantity() rule {
	follows := among(append(append([]string{vocabulary.And}, w.Clauses...), firstWords(w.Bounds)...))
	const sign = `%°º/²³^µ`
	known := among(w.Units) + `(?![\p{L}_` + sign + `])`
	clause := among(w.Either) + notWord + `(?=` + blank + `*+(?:$|[^\p{L}_"“„]|` + follows + notWord + `))`
	unknown := `(?!` + follows + `(?!\p{L}))(?!` + among(w.Either) + notWord + `)[\p{L}%°ºµ][\p{L}_` + sign + `-]*`
	return rule{
		Match:    `(` + `[-\x{2212}]?` + number() + `)(?:` + blank + `*(?:(` + known + `|` + clause + `)|(` + unknown + `)|(?<=[\d` + fractions() + `])(["”″'’′])(?!\p{L})))?` + w.further(),
		Captures: scopes(scopeNumber, scopeUnit, scopeStray, scopeStray, scopeRange, scopeRange),
	}
}

func firstWords(list []string) []string {
	var words []string
	for _, text := range list {
		words = append(words, strings.Fields(text)[0])
	}
	return sorted(words)
}
