package calendar

import (
	"cmp"
	"slices"
	"strings"
)

// OrderOf gives the order of day and month that a locale has, as far as it is sure. The
// locale is what LC_ALL, LC_TIME or LANG says, the first that says something, such as en_GB.UTF-8.
// The orders are those of the short dates of the Unicode Common Locale Data Repository, from memory;
// where both orders are in use, as in Canada, none is sure.
func OrderOf(env func(string) string) Order {
	locale := cmp.Or(env("LC_ALL"), env("LC_TIME"), env("LANG"))
	locale, _, _ = strings.Cut(locale, ".")
	locale, _, _ = strings.Cut(locale, "@")
	language, region, _ := strings.Cut(locale, "_")
	switch {
	case locale == "en_US", locale == "es_US":
		return MonthFirst
	case language == "en" && slices.Contains([]string{"GB", "IE", "AU", "NZ", "IN"}, region), slices.Contains(dayFirst, language) && region != "" && !slices.Contains(mixed, region):
		return DayFirst
	}
	return Unknown
}

// dayFirst are languages whose short dates have the day first in every region.
var dayFirst = []string{"cs", "da", "de", "el", "es", "et", "fi", "fr", "is", "it", "nb", "nl", "nn", "no", "pl", "pt", "ro", "ru", "sk", "sl", "tr", "uk"}

// mixed are regions where another order is in use beside that of the language.
var mixed = []string{"CA", "US", "PA", "PR"}
