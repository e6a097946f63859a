package syntax

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// NotText is the name of what is found in a file that is no text in UTF-8.
const NotText = "not-text"

// Rules lists what this stage finds.
func Rules() []finding.Rule {
	return []finding.Rule{
		fileTooLarge, notText, hiddenCharacter, strayCharacter, verbMissing, valueMissing, misplaced,
		unclosedText, unclosedBlock, strayBrace, tooDeep, tooManyStatements,
		halfMissing, commentSign, blockSign,
	}
}

// VerbMissing is the name of the rule about a statement that begins with a value.
const VerbMissing = "verb-missing"

var (
	fileTooLarge = finding.Rule{Name: "file-too-large", Severity: finding.Fault,
		Title: "the file is over 4 MiB",
		Why:   "a process file is written by hand; one of this size is something else",
		Do:    "give the process file itself"}
	notText = finding.Rule{Name: NotText, Severity: finding.Fault,
		Title: "the file holds bytes that are not UTF-8 text",
		Why:   "a degree sign saved in another encoding would be read as something else, and so would the temperature before it",
		Do:    "save the file as UTF-8",
		Bad:   "site \"Loft\" { air 8 to 15 \xb0C }", Good: "site \"Loft\" { air 8 to 15 °C }"}
	hiddenCharacter = finding.Rule{Name: "hidden-character", Severity: finding.Fault,
		Title: "a control or direction character that cannot be seen",
		Why:   "what is read would not be what is on the screen",
		Do:    "delete it and type the words again",
		Bad:   "site \"Loft\" { water 9 to \u202e12 °C }", Good: "site \"Loft\" { water 9 to 12 °C }"}
	strayCharacter = finding.Rule{Name: "stray-character", Severity: finding.Fault,
		Title: "a character the language has no use for",
		Why:   "the statement cannot be read past it",
		Do:    "say in words what it means; statements end at the line's end or at ;",
		Bad:   "site \"Loft\" { water 9 to 12 °C, air 8 to 15 °C }", Good: "site \"Loft\" { water 9 to 12 °C; air 8 to 15 °C }"}
	verbMissing = finding.Rule{Name: VerbMissing, Severity: finding.Fault,
		Title: "a statement begins with something other than a word",
		Why:   "the first word says what the statement is about",
		Do:    "begin with a word such as soak, hold or dry",
		Bad:   "site \"Loft\" { 9 to 12 °C }", Good: "site \"Loft\" { water 9 to 12 °C }"}
	valueMissing = finding.Rule{Name: "value-missing", Severity: finding.Fault,
		Title: "a bound or a range stops before its value",
		Why:   "without the value there is nothing to hold to",
		Do:    "write the value with its unit",
		Bad:   "grain \"Far field\" { moisture at least }", Good: "grain \"Far field\" { moisture 12.4 % }"}
	misplaced = finding.Rule{Name: "misplaced", Severity: finding.Fault,
		Title: "words that do not fit where they stand",
		Why:   "the statement cannot be read past them",
		Do:    "see the statement's form with explain",
		Bad:   "site \"Loft\" { awake 06:30 to 22:30 to 23:00 }", Good: "site \"Loft\" { awake 06:30 to 22:30 }"}
	unclosedText = finding.Rule{Name: "unclosed-text", Severity: finding.Fault,
		Title: "a quoted name is not closed on its line",
		Why:   "the rest of the line would be read as part of the name",
		Do:    "close it with \"",
		Bad:   "vessel \"blue tub", Good: "vessel \"blue tub\" { holds 25 l }"}
	unclosedBlock = finding.Rule{Name: "unclosed-block", Severity: finding.Fault,
		Title: "a block is not closed",
		Why:   "the statements below it are taken as part of it",
		Do:    "add the closing brace where the block ends",
		Bad:   "vessel \"blue tub\" { holds 25 l", Good: "vessel \"blue tub\" { holds 25 l }"}
	strayBrace = finding.Rule{Name: "stray-brace", Severity: finding.Fault,
		Title: "a brace without its partner",
		Why:   "a block belongs to the statement in front of it",
		Do:    "look which brace has no partner: one is missing, or one is too many",
		Bad:   "vessel \"blue tub\" { holds 25 l } }", Good: "vessel \"blue tub\" { holds 25 l }"}
	tooDeep = finding.Rule{Name: "nested-too-deep", Severity: finding.Fault,
		Title: "blocks inside blocks, more than 32 deep",
		Why:   "no process needs it; a missing closing brace is more likely",
		Do:    "look for a closing brace that is missing above"}
	halfMissing = finding.Rule{Name: "am-or-pm-missing", Severity: finding.Fault,
		Title: "a time of day is an hour alone, or does not say am or pm beside times that do",
		Why:   "it may be of the morning or of the evening",
		Do:    "write am or pm behind it, or a time of 24 hours with two digits for the hour, such as 07:30",
		Bad:   "site \"Loft\" { awake 7 to 10 pm }", Good: "site \"Loft\" { awake 7 am to 10 pm }"}
	commentSign = finding.Rule{Name: "comment-sign", Severity: finding.Fault,
		Title: "a comment begins with another sign than #, or a # begins one that was not meant",
		Why:   "what is a comment and what is read must be told apart",
		Do:    "begin a comment with #",
		Bad:   "vessel \"blue tub\" { holds 25 l } // filled to the rim", Good: "vessel \"blue tub\" { holds 25 l } # filled to the rim"}
	blockSign = finding.Rule{Name: "block-sign", Severity: finding.Fault,
		Title: "a block has brackets, begin and end, or its indentation in place of braces",
		Why:   "where a block begins and ends is told by braces alone, so that no blank changes what is meant",
		Do:    "put { in front of what is in the block, and } behind it",
		Bad:   "vessel \"blue tub\" [ holds 25 l ]", Good: "vessel \"blue tub\" { holds 25 l }"}
	tooManyStatements = finding.Rule{Name: "too-many-statements", Severity: finding.Fault,
		Title: "more than 10,000 statements in one file",
		Why:   "a process file is written by hand; one of this size is something else",
		Do:    "split the file and bring the parts in with use"}
)

// strayHints are what to do about some characters.
var strayHints = map[string]string{
	",": "separate statements with ; or a line end, and write decimals with a point",
	"'": signHint, "’": signHint, "′": signHint, "″": signHint, "”": signHint,
}

const signHint = "write a unit in letters: ft or in for a length, min or s for a time"

// misreading says why a header could not be read, given its first token and the
// one at which reading stopped.
func misreading(p *parser, first, blame lexer.Token) finding.Finding {
	place := p.place(span(blame))
	switch {
	case blame.Type == kindBound:
		return valueMissing.At(place, fmt.Sprintf("a value is missing behind %q", place.Text()))
	case first.Pos == blame.Pos && blame.Type != kindStray:
		f := verbMissing.At(place, fmt.Sprintf("a statement begins with a word, not with %s", shown(blame)))
		if step := stepBehind(p, blame); step != "" {
			f.Hint = fmt.Sprintf("write the step first: %s %s", step, place.Text())
		}
		return f
	case blame.Type == kindStray && lookalike(blame.Value+" h") > 0:
		return lookalikeAt(p, blame)
	case blame.Type == kindStray:
		f := strayCharacter.At(place, fmt.Sprintf("%s has no meaning here", shown(blame)))
		if _, poison := vocabulary.PoisonOf(first.Value); poison && blame.Value == "?" {
			from := span(first).End + 1
			f.Write(p.place(source.Span{Start: from, End: span(blame).End}), vocabulary.SaidUnknown)
		}
		if hint := strayHints[blame.Value]; hint != "" {
			f.Hint = hint
		}
		if blame.Value == "@" {
			f.Hint = "write " + vocabulary.ClauseAt
			f.Fixes = []finding.Edit{{Place: place, New: spacedOut(p, span(blame), vocabulary.ClauseAt)}}
		}
		return f
	case terminal(blame.Type):
		before := p.file.Line(p.file.Position(first.Pos.Offset, 0).Line)
		place.Span = lastWord(p, first.Pos.Offset, min(blame.Pos.Offset, before.End))
		return valueMissing.At(place, fmt.Sprintf("a value is missing behind %q", place.Text()))
	}
	return misplaced.At(place, fmt.Sprintf("%s does not fit here", shown(blame)))
}

// spacedOut is a word with a blank on each side where it would stand right beside another.
func spacedOut(p *parser, at source.Span, word string) string {
	text := string(p.file.Bytes())
	if at.Start > 0 && !strings.ContainsAny(text[at.Start-1:at.Start], blanks+"\n\r") {
		word = " " + word
	}
	if at.End < len(text) && !strings.ContainsAny(text[at.End:at.End+1], blanks+"\n\r") {
		word += " "
	}
	return word
}

// stepBehind gives the step that stands right behind a time: soak, of 7 h soak; "" where
// there is none.
func stepBehind(p *parser, value lexer.Token) string {
	if q, err := quantity.Parse(value.Value); value.Type != kindQuantity || err != nil || q.Dimension != quantity.Time {
		return ""
	}
	line, _, _ := strings.Cut(string(p.file.Bytes()[span(value).End:]), "\n")
	words := strings.Fields(line)
	if len(words) == 0 || !vocabulary.IsStep(words[0]) {
		return ""
	}
	return words[0]
}

// lastWord gives the span of the last word in a stretch of text, to underline
// where something is missing behind it.
func lastWord(p *parser, start, end int) source.Span {
	text := strings.TrimRight(string(p.file.Bytes()[start:end]), " \t")
	at := strings.LastIndexAny(text, " \t") + 1
	return source.Span{Start: start + at, End: start + len(text)}
}

func shown(t lexer.Token) string {
	if r, _ := utf8.DecodeRuneInString(t.Value); t.Type == kindStray && (r == utf8.RuneError || r < ' ') {
		return fmt.Sprintf("the byte 0x%02X", t.Value[0])
	}
	if t.Type == kindText {
		return t.Value
	}
	return fmt.Sprintf("%q", t.Value)
}
