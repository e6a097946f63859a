package evidence

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"hash"
	"math"
	"reflect"
	"slices"
	"strconv"
	"time"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Print tells trials apart: two of the same print have the same forecasts and residuals at
// every point of their axes. It is made of all that the process holds and the house with it,
// of the observations and of the course that the record gives, but not of where any of it is
// written. So what does not matter may change it, and nothing that matters leaves it as it was.
func (t *Trial) Print() [sha256.Size]byte {
	p := printer{hash: sha256.New(), seen: map[target]int{}}
	p.number(math.Float64bits(t.Now))
	p.walk(reflect.ValueOf(t.Batch.Began.Time))
	p.walk(reflect.ValueOf(t.Process))
	p.walk(reflect.ValueOf(t.Axes))
	p.walk(reflect.ValueOf(t.Observations))
	p.walk(reflect.ValueOf(t.course))
	return [sha256.Size]byte(p.hash.Sum(nil))
}

// printer writes values into a hash.
type printer struct {
	hash hash.Hash
	seen map[target]int // pointers that were followed, by their order: what they point to is written once
}

// target is what a pointer points to: a struct and its first field stand in the same place.
type target struct {
	at uintptr
	of reflect.Type
}

// unprinted are types of which a forecast takes nothing: where things are written, the
// records of other batches, and what ends a forecast.
var unprinted = []reflect.Type{
	reflect.TypeFor[source.Place](), reflect.TypeFor[*source.File](), reflect.TypeFor[*model.Batch](), reflect.TypeFor[model.Accept](),
	reflect.TypeFor[*forecast.Forecast](), reflect.TypeFor[context.Context](), reflect.TypeFor[*work.Pool](),
}

func (p *printer) number(n uint64) { _ = binary.Write(p.hash, binary.LittleEndian, n) }

func (p *printer) text(s string) {
	p.number(uint64(len(s)))
	p.hash.Write([]byte(s))
}

// walk writes a value with all that it points to. Functions are made by what stands beside
// them, and are left out.
func (p *printer) walk(v reflect.Value) {
	if !v.IsValid() {
		p.text("nil")
		return
	}
	if slices.Contains(unprinted, v.Type()) {
		return
	}
	p.text(v.Type().String())
	switch v.Kind() {
	case reflect.Bool:
		p.text(strconv.FormatBool(v.Bool()))
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		p.number(uint64(v.Int()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uintptr:
		p.number(v.Uint())
	case reflect.Float32, reflect.Float64:
		p.number(math.Float64bits(v.Float()))
	case reflect.String:
		p.text(v.String())
	case reflect.Struct:
		p.fields(v)
	case reflect.Slice, reflect.Array:
		p.number(uint64(v.Len()))
		for i := range v.Len() {
			p.walk(v.Index(i))
		}
	case reflect.Map:
		p.entries(v)
	case reflect.Pointer:
		p.follow(v)
	case reflect.Interface:
		p.walk(v.Elem())
	}
}

func (p *printer) fields(v reflect.Value) {
	if v.Type() == reflect.TypeFor[time.Time]() {
		p.time(v)
		return
	}
	for i := range v.NumField() {
		p.walk(v.Field(i))
	}
}

// time writes a time as it is told, with its offset: what falls on which hour of the day is
// asked of it. Its zone is no part of it, and its fields are not to be read from outside.
func (p *printer) time(v reflect.Value) {
	if v.CanInterface() {
		p.text(v.Interface().(time.Time).Format(time.RFC3339Nano))
		return
	}
	for i := range 2 { // the instant; the last field is the zone
		p.walk(v.Field(i))
	}
}

func (p *printer) follow(v reflect.Value) {
	if v.IsNil() {
		p.text("nil")
		return
	}
	to := target{v.Pointer(), v.Type()}
	if at, ok := p.seen[to]; ok {
		p.number(uint64(at))
		return
	}
	p.seen[to] = len(p.seen)
	p.walk(v.Elem())
}

// entries writes a map in the order of its keys as they print.
func (p *printer) entries(v reflect.Value) {
	keys := v.MapKeys()
	sorted.Stable(keys, func(a, b reflect.Value) int { return cmp.Compare(a.String(), b.String()) })
	p.number(uint64(len(keys)))
	for _, k := range keys {
		p.walk(k)
		p.walk(v.MapIndex(k))
	}
}
