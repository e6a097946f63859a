// Package json writes answers as JSON: one object, its keys those of package key. It
// knows of no answer in particular, so that none can be written otherwise than the rest.
package json

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/write/key"
	"maltwright/lang/sorted"
)

// Format is the number of the form in which answers are written. It changes where keys
// or the meaning of a value do; keys may be added without.
const Format = 2

// Say puts a value into a sentence.
type Say func(answer.Told) string

// Write writes an answer, a struct or a pointer to one.
func Write(w io.Writer, result any, say Say) error {
	v := reflect.Indirect(reflect.ValueOf(result))
	out := object{{"format", Format}}
	out = append(out, say.object(v)...)
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

// object is a JSON object that keeps the order of its members.
type object []member

type member struct {
	key   string
	value any
}

// MarshalJSON writes the members in their order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "%q:", m.key)
		if err := enc.Encode(m.value); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// object lists the members of a struct.
func (say Say) object(v reflect.Value) object {
	out := object{}
	for _, f := range key.Fields(v.Type()) {
		field := v.FieldByIndex(f.Index)
		if f.Spare && (field.IsZero() || field.Kind() == reflect.Slice && field.Len() == 0) {
			continue
		}
		out = append(out, member{f.Key, say.value(field)})
	}
	return out
}

// value is what stands for a value: a number that is not known is null, a list is never.
func (say Say) value(v reflect.Value) any {
	switch kind := v.Kind(); {
	case (kind == reflect.Pointer || kind == reflect.Interface) && v.IsNil():
		return nil
	case kind == reflect.Pointer || kind == reflect.Interface:
		return say.value(v.Elem())
	case key.IsTold(v.Type()):
		return say(v.Interface().(answer.Told))
	case key.IsMoment(v.Type()):
		return moment(v.Interface().(time.Time))
	case kind == reflect.Float64:
		return figure(v)
	case kind == reflect.Struct:
		return say.object(v)
	case kind == reflect.Slice:
		list := make([]any, v.Len())
		for i := range list {
			list[i] = say.value(v.Index(i))
		}
		return list
	case kind == reflect.Map:
		return say.members(v)
	}
	return v.Interface()
}

// members lists those of a map, in the order of their keys.
func (say Say) members(v reflect.Value) object {
	names := v.MapKeys()
	sorted.Stable(names, func(a, b reflect.Value) int { return bytes.Compare([]byte(a.String()), []byte(b.String())) })
	out := object{}
	for _, name := range names {
		out = append(out, member{name.String(), say.value(v.MapIndex(name))})
	}
	return out
}

func figure(v reflect.Value) any {
	u := answer.Unit{SI: 1, Digits: 3}
	if f, ok := v.Interface().(answer.Figure); ok {
		u = f.Unit()
	}
	if n, known := answer.Written(v.Float(), u); known {
		return n
	}
	return nil
}

// moment writes a time; one that there is not is null.
func moment(t time.Time) any {
	if t.IsZero() {
		return nil
	}
	return t.Format(time.RFC3339)
}
