// Package csv writes rows of answers for a spreadsheet. The heads are the keys that JSON
// has, the members of a struct behind its own name.
package csv

import (
	"encoding/csv"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"maltwright/cmd/answer"
	"maltwright/cmd/words"
	"maltwright/cmd/write/key"
)

// Rows is a file that is written row by row, so that a long one takes no memory.
type Rows[T any] struct {
	out     *csv.Writer
	columns []column
}

// column is one field of a row, through the structs it stands in.
type column struct {
	head string
	path [][]int // of one struct after another; a pointer on the way may be nil
	unit answer.Unit
}

// New writes the heads of rows of T. Columns whose head is in without are left out.
func New[T any](w io.Writer, without ...string) *Rows[T] {
	r := &Rows[T]{out: csv.NewWriter(w)}
	r.columns = columns(reflect.TypeFor[T](), "", nil)
	var kept []column
	var heads []string
	for _, c := range r.columns {
		if !slices.Contains(without, c.head) {
			kept, heads = append(kept, c), append(heads, c.head)
		}
	}
	r.columns = kept
	_ = r.out.Write(heads) // an error stays and is given by Close
	return r
}

func columns(t reflect.Type, before string, path [][]int) (list []column) {
	for _, f := range key.Fields(t) {
		at := append(append([][]int{}, path...), f.Index)
		inner := f.Type
		if inner.Kind() == reflect.Pointer {
			inner = inner.Elem()
		}
		u, _ := key.UnitOf(inner)
		if inner.Kind() == reflect.Struct && !key.IsMoment(inner) {
			name := strings.TrimSuffix(f.Key, "_"+u.Key)
			for _, c := range columns(inner, before+name+"_", at) {
				if c.unit.Key != "" && !strings.HasSuffix(c.head, "_"+c.unit.Key) {
					c.head += "_" + c.unit.Key
				}
				list = append(list, c)
			}
			continue
		}
		head := before + f.Key
		if f.Cell == "." {
			head = strings.TrimSuffix(before, "_")
		}
		list = append(list, column{head, at, u})
	}
	return list
}

// Write writes a row.
func (r *Rows[T]) Write(row T) {
	cells := make([]string, len(r.columns))
	for i, c := range r.columns {
		cells[i] = words.Safe(inert(c.cell(reflect.ValueOf(row))))
	}
	_ = r.out.Write(cells)
}

// Close ends the file, and tells what went wrong.
func (r *Rows[T]) Close() error {
	r.out.Flush()
	if err := r.out.Error(); err != nil {
		return fmt.Errorf("csv: %w", err)
	}
	return nil
}

// cell is what stands in a column of a row; "" where there is nothing.
func (c column) cell(v reflect.Value) string {
	for _, index := range c.path {
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				return ""
			}
			v = v.Elem()
		}
		v = v.FieldByIndex(index)
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return ""
		}
		v = v.Elem()
	}
	switch {
	case key.IsMoment(v.Type()):
		if t := v.Interface().(time.Time); !t.IsZero() {
			return t.Format(time.RFC3339)
		}
		return ""
	case v.Kind() == reflect.Float64:
		if n, known := answer.Written(v.Float(), c.unit); known {
			return strconv.FormatFloat(n, 'f', c.unit.Digits, 64)
		}
		return ""
	}
	return fmt.Sprint(v.Interface())
}

// plain is a cell that a spreadsheet takes for the number that it is, or the name of
// standard input.
var plain = regexp.MustCompile(`^(-|-?\d+(\.\d+)?)$`)

// formula are the characters with which a cell begins that a spreadsheet reckons with,
// the wide ones too, and those that it passes over before it looks.
const formula = "=+-@\t\r\n＝＋－＠"

// inert makes a cell that would be a formula into text, with an apostrophe before it:
// names come from files, and a file may come from anybody.
func inert(cell string) string {
	first, _ := utf8.DecodeRuneInString(cell)
	if cell != "" && strings.ContainsRune(formula, first) && !plain.MatchString(cell) {
		return "'" + cell
	}
	return cell
}
