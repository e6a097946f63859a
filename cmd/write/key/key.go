// Package key names the fields of an answer for programs: in small letters, with the unit
// of a figure at the end. JSON, CSV and the schema take the names from here, so that one
// thing has one name wherever it is written.
package key

import (
	"reflect"
	"strings"
	"time"
	"unicode"

	"maltwright/cmd/answer"
)

// Field is a field of a struct, under its key.
type Field struct {
	Key   string
	Index []int
	Type  reflect.Type
	Spare bool   // it is left out where it says nothing
	Cell  string // its head in CSV behind that of its struct: "." for the head of the struct itself, "" for its key
	Doc   string
}

// Fields lists those of a struct in their order, those of embedded structs in place. In a
// struct that has a unit itself, figures of that unit need no ending.
func Fields(t reflect.Type) []Field {
	own, has := UnitOf(t)
	var list []Field
	for _, f := range reflect.VisibleFields(t) {
		if f.Anonymous || !f.IsExported() {
			continue
		}
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "-" {
			continue
		}
		if name == "" {
			name = snake(f.Name)
		}
		if u, ok := UnitOf(f.Type); ok && u.Key != "" && !(has && u.Key == own.Key) && !strings.HasSuffix(name, "_"+u.Key) {
			name += "_" + u.Key
		}
		list = append(list, Field{Key: name, Index: f.Index, Type: f.Type, Spare: options == "omitempty", Cell: f.Tag.Get("csv"), Doc: f.Tag.Get("doc")})
	}
	return list
}

// UnitOf is the unit of a figure, of a list or map of them, or of a pointer to one.
func UnitOf(t reflect.Type) (answer.Unit, bool) {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice || t.Kind() == reflect.Map {
		t = t.Elem()
	}
	if f, ok := reflect.Zero(t).Interface().(answer.Figure); ok {
		return f.Unit(), true
	}
	return answer.Unit{}, false
}

var (
	told   = reflect.TypeFor[answer.Told]()
	moment = reflect.TypeFor[time.Time]()
)

// IsTold says whether the values of a type are put into words.
func IsTold(t reflect.Type) bool { return t.Implements(told) }

// IsMoment says whether the values of a type are times of the clock.
func IsMoment(t reflect.Type) bool { return t == moment }

// snake turns FinalMoisture into final_moisture, and CO2 into co2.
func snake(name string) string {
	var b strings.Builder
	letters := []rune(name)
	for i, r := range letters {
		if unicode.IsUpper(r) && i > 0 && (unicode.IsLower(letters[i-1]) || i+1 < len(letters) && unicode.IsLower(letters[i+1])) {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}
