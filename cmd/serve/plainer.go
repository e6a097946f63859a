package serve

import (
	"fmt"
	"net/url"
	"regexp"
	"strings"
)

// plainer says a refusal as a page does, whose reader has a form before the eyes and not the text of a record.
func plainer(text string) string {
	text = ruled.ReplaceAllString(strings.TrimPrefix(text, "not noted: "), "")
	for _, x := range onForm {
		text = x.written.ReplaceAllString(text, x.shown)
	}
	return text
}

// ruled is the name of the rule behind a refusal.
var ruled = regexp.MustCompile(` \[[a-z][a-z-]*\]$`)

// onForm are hints for who writes a line, each as it is for who fills in a form.
var onForm = []struct {
	written *regexp.Regexp
	shown   string
}{
	{regexp.MustCompile(`(?:take|leave) (?:in|out) "[^"]*"(?: out)?`), "choose “the grain alone”"},
	{regexp.MustCompile(`add to the block of \S+ ("[^"]*") a line such as: weighs [^;]*; `), "$1 has no empty weight in its block; "},
	{regexp.MustCompile(`--at ("[^"]*")`), "the time $1"},
	{regexp.MustCompile(`; see maltwright check .*$`), "; what is wrong in it stands on the page of the batch"},
}

// numbers are the fields in which a number is typed.
var numbers = map[string][]string{
	kindWeighed:   {nameValue, nameOunces},
	kindHeat:      {nameValue},
	kindChit:      {nameValue, nameOf},
	kindAcrospire: classNames(),
	kindSample:    {nameValue, nameDry},
	kindMoisture:  {nameValue},
}

func classNames() (list []string) {
	for _, c := range classes {
		list = append(list, c.name)
	}
	return list
}

// number is one as it may be typed; with letters behind it, it has its unit.
var number = regexp.MustCompile(`^[-−+]?(\d+\.?\d*|\.\d+)\s*%?$`)

// misread says which field holds no number, and what to type.
func misread(v url.Values) error {
	for _, name := range numbers[v.Get(nameKind)] {
		text := typedNumber(v.Get(name))
		switch {
		case text == "" || number.MatchString(text) || strings.ContainsAny(text, letters):
		case comma3.MatchString(text):
			return missing(fmt.Sprintf("%q may be read in two ways: type %s or %s", text, strings.Replace(text, ",", ".", 1), strings.Replace(text, ",", "", 1)))
		default:
			return missing(fmt.Sprintf("%q is not a number: type digits, with one point where it needs one, such as 8.33", text))
		}
	}
	return nil
}

// comma3 is a number whose comma may part thousands.
var comma3 = regexp.MustCompile(`^\d{1,3},\d{3}$`)
