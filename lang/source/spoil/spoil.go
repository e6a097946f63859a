// Package spoil breaks texts at random, the same from the same seed, for hunts that
// ask what must hold of any text. Only tests use this package.
package spoil

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
)

// Pieces cuts a text at its lines into pieces of at most so many bytes. A line that is
// longer is left out.
func Pieces(text string, most int) []string {
	var list []string
	piece := ""
	for _, line := range strings.SplitAfter(text, "\n") {
		if len(piece)+len(line) > most && piece != "" {
			list, piece = append(list, piece), ""
		}
		if len(line) <= most {
			piece += line
		}
	}
	if piece != "" {
		list = append(list, piece)
	}
	return list
}

// Random is chance from a seed.
func Random(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 1)) }

// number is a figure as a process writes one; a name or a time of day is none.
var number = regexp.MustCompile(`(^|[ \t(])(\d+(?:\.\d+)?)( |$|\n)`)

// Numbers changes one to three figures of a text to between a thousandth and a thousand
// times as much.
func Numbers(r *rand.Rand, text string) string {
	for range 1 + r.IntN(3) {
		text = oneNumber(r, text)
	}
	return text
}

func oneNumber(r *rand.Rand, text string) string {
	all := number.FindAllStringSubmatchIndex(text, -1)
	if len(all) == 0 {
		return text
	}
	at := all[r.IntN(len(all))]
	v, _ := strconv.ParseFloat(text[at[4]:at[5]], 64) // it is a number by its form
	return text[:at[4]] + scaled(r, v) + text[at[5]:]
}

// scaled is a figure in three digits, times ten to a power between -3 and 3. Half of
// the powers are whole, since a point or a unit is what people get wrong.
func scaled(r *rand.Rand, v float64) string {
	power := float64(r.IntN(7) - 3)
	if r.IntN(2) == 0 {
		power = 6*r.Float64() - 3
	}
	v *= math.Pow(10, power)
	places := 0
	if v != 0 {
		places = max(0, min(12, 2-int(math.Floor(math.Log10(v)))))
	}
	return strconv.FormatFloat(v, 'f', places, 64)
}

// Text breaks a text in one to three ways. Words are what may come into it from
// elsewhere.
func Text(r *rand.Rand, text string, words []string) string {
	for range 1 + r.IntN(3) {
		text = ways[r.IntN(len(ways))](r, text, words)
	}
	return text
}

// Words are the words of a text, for Text.
func Words(text string) []string { return strings.Fields(text) }

// ways are in the order of nothing; what people do is there more than once.
var ways = []func(*rand.Rand, string, []string) string{
	func(r *rand.Rand, text string, _ []string) string { return Numbers(r, text) },
	func(r *rand.Rand, text string, _ []string) string { return Numbers(r, text) },
	lineGone, lineGone, linesSwapped, lineTwice, blockGone, wordChanged, wordChanged, wordGone, byteChanged,
}

func lineGone(r *rand.Rand, text string, _ []string) string {
	lines := strings.SplitAfter(text, "\n")
	i := r.IntN(len(lines))
	return strings.Join(lines[:i], "") + strings.Join(lines[i+1:], "")
}

func linesSwapped(r *rand.Rand, text string, _ []string) string {
	lines := strings.SplitAfter(text, "\n")
	i, j := r.IntN(len(lines)), r.IntN(len(lines))
	lines[i], lines[j] = lines[j], lines[i]
	return strings.Join(lines, "")
}

func lineTwice(r *rand.Rand, text string, _ []string) string {
	lines := strings.SplitAfter(text, "\n")
	i, j := r.IntN(len(lines)), r.IntN(len(lines))
	return strings.Join(lines[:j], "") + lines[i] + strings.Join(lines[j:], "")
}

// block is one that holds no other, with its head.
var block = regexp.MustCompile(`(?m)^[^\n{}]*\{[^{}]*\}[^\n]*\n`)

func blockGone(r *rand.Rand, text string, _ []string) string {
	all := block.FindAllStringIndex(text, -1)
	if len(all) == 0 {
		return text
	}
	at := all[r.IntN(len(all))]
	return text[:at[0]] + text[at[1]:]
}

var word = regexp.MustCompile(`[^\s]+`)

func wordChanged(r *rand.Rand, text string, words []string) string {
	return overWord(r, text, words[r.IntN(len(words))])
}

func wordGone(r *rand.Rand, text string, _ []string) string { return overWord(r, text, "") }

func overWord(r *rand.Rand, text, by string) string {
	all := word.FindAllStringIndex(text, -1)
	if len(all) == 0 {
		return text
	}
	at := all[r.IntN(len(all))]
	return text[:at[0]] + by + text[at[1]:]
}

func byteChanged(r *rand.Rand, text string, _ []string) string {
	if text == "" {
		return text
	}
	b := []byte(text)
	b[r.IntN(len(b))] = byte(r.IntN(256))
	return string(b)
}
