package syntax

import "maltwright/lang/finding"

// sign is a kind of sign that people write where the language has a word, or nothing.
type sign struct {
	rule    finding.Rule
	says    string // what is told of it; %s is the sign as written
	do      string // what the language has in its place, in general
	certain bool   // nothing else can be meant
	whole   bool   // it makes sense in the whole file alone
}

var (
	signRange   = &sign{rule: strayCharacter, says: "\"%s\" is no sign of the language; the word between the two ends of a range is to", certain: true}
	signAbout   = &sign{rule: strayCharacter, says: "\"%s\" has no meaning here: there is no word for about", do: "a value is written as it is, and one that may lie between two as a range"}
	signBetween = &sign{rule: strayCharacter, says: "\"%s\" has no meaning here", do: "say the two ends of the range"}
	signAt      = &sign{rule: strayCharacter, says: "\"%s\" is no sign of the language; the word is at", certain: true}
	signAnd     = &sign{rule: strayCharacter, says: "\"%s\" is no sign of the language; the word is and", certain: true}
	signColon   = &sign{rule: strayCharacter, says: "\"%s\" has no place behind a word: its value stands right behind it", certain: true}
	signEquals  = &sign{rule: strayCharacter, says: "\"%s\" has no place behind a word: its value stands right behind it", certain: true}
	signUnquote = &sign{rule: strayCharacter, says: "%s is no name: a value stands without quotes", certain: true}
	signTwice   = &sign{rule: strayCharacter, says: "%s has its quotes twice", certain: true}
	signBound   = &sign{rule: strayCharacter, says: "\"%s\" is one sign, with no blank in it", certain: true}
	signPlus    = &sign{rule: strayCharacter, says: "\"%s\" is no form of a value", do: "a bound is said in words"}
	signFigure  = &sign{rule: strayCharacter, says: "\"%s\" is no form of a value", certain: true}
	signReason  = &sign{rule: strayCharacter, says: "\"%s\" does not begin a reason; the word is because", certain: true}
	signTo      = &sign{rule: strayCharacter, says: "\"%s\" is no word of the language; what was done instead stands behind to", certain: true}
	signCapital = &sign{rule: verbMissing, says: "\"%s\" is not a word of the language, which is written small", certain: true}
	signStep    = &sign{rule: strayCharacter, says: "\"%s\" has no place here", do: "the steps are counted by themselves"}
	signComma   = &sign{rule: strayCharacter, says: "\"%s\" has no meaning here: the parts of a statement stand side by side", certain: true}
	signEnd     = &sign{rule: strayCharacter, says: "\"%s\" does not end a statement", do: "the end of the line does, or ;", certain: true}
	signStop    = &sign{rule: strayCharacter, says: "\"%s\" has no meaning behind a statement or a unit", certain: true}
	signBullet  = &sign{rule: strayCharacter, says: "\"%s\" in front of a statement has no meaning: a statement begins with its word", certain: true}
	signFence   = &sign{rule: strayCharacter, says: "\"%s\" is no statement", do: "a line that only sets others apart is a comment", certain: true}
	signParens  = &sign{rule: strayCharacter, says: "\"%s\" has no meaning here: a value stands without brackets", certain: true}
	signAside   = &sign{rule: commentSign, says: "%s does not stand in brackets: it is a comment, and a comment begins with #", certain: true}
	signComment = &sign{rule: commentSign, says: "%s begins no comment; a comment begins with #", certain: true}
	signNumber  = &sign{rule: commentSign, says: "\"%s\" begins a comment, so that what stands behind it is not read", do: "the steps are counted by themselves", certain: true}
	signQuote   = &sign{rule: strayCharacter, says: "%s is no quote of the language", do: "a name stands in double quotes", certain: true}
	signOpen    = &sign{rule: unclosedText, says: "%s is not closed on its line"}
	signTimes   = &sign{rule: strayCharacter, says: "\"%s\" is no form of the language", do: "steps that are done again stand in a repeat"}
	signEach    = &sign{rule: strayCharacter, says: "\"%s\" is no form of the language", do: "how often is said by the time between"}
	signLine    = &sign{rule: misplaced, says: "%s", do: "a statement stands on one line", certain: true}
	signDegree  = &sign{rule: strayCharacter, says: "\"%s\" only looks like the sign of a degree", certain: true}
	signWide    = &sign{rule: strayCharacter, says: "\"%s\" is twice as wide as the sign of the language", certain: true}
	signSlash   = &sign{rule: strayCharacter, says: "\"%s\" is not the slash of a fraction", certain: true}
	signPoint   = &sign{rule: strayCharacter, says: "\"%s\" is not the point of a number", certain: true}
	signGarbled = &sign{rule: notText, says: "%s is what is left of another character: the file was saved as UTF-8 and opened as something else", certain: true}
	signHyphen  = &sign{rule: strayCharacter, says: "\"%s\" is a dash, and the word has a hyphen", certain: true}
	signMargin  = &sign{rule: strayCharacter, says: "\"%s\" in front of each line is not of the process", do: "each line begins with its own words", certain: true, whole: true}
	signBraces  = &sign{rule: blockSign, says: "brackets open and close no block; braces do", do: "they are { and }", certain: true, whole: true}
	signBegin   = &sign{rule: blockSign, says: "begin and end make no block; braces do", do: "they are { and }", certain: true, whole: true}
	signOpening = &sign{rule: blockSign, says: "the block that ends below is not opened", do: "a block begins with {", certain: true, whole: true}
	signEndWord = &sign{rule: blockSign, says: "%s closes no block; a brace does", do: "it is }", certain: true, whole: true}
	signIndent  = &sign{rule: blockSign, says: "blocks have no braces here, and lines further in make none", do: "{ stands behind the head of each block, and } below its last line", whole: true}
)
