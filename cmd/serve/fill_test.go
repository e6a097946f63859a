package serve

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"maltwright/cmd/write/fill/filltest"
)

// square takes the figures of a table away that stand under no head: no table of ours has such.
func square(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.Elem().IsValid() {
			square(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			square(v.Index(i))
		}
	case reflect.Struct:
		if t, ok := v.Interface().(table); ok {
			for _, r := range t.Rows {
				for i := len(t.Head); i < len(r.Cells); i++ {
					r.Cells[i].Number = false
				}
			}
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				square(v.Field(i))
			}
		}
	}
}

// Whatever a batch, a process or a record holds, every page is filled as the standard library fills it.
func TestPagesAreFilledAsTheStandardLibraryFillsThem(t *testing.T) {
	seen := map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		p := filltest.Any(t, page{})
		name := rapid.SampledFrom([]string{listPage, batchPage, readingPage, processPage, troublePage}).Draw(t, "page")
		seen[name] = true
		switch name {
		case listPage:
			p.Body = filltest.Any(t, listView{})
		case batchPage:
			p.Body = filltest.Any(t, batchView{})
		case readingPage:
			p.Body = filltest.Any(t, readingView{})
		case processPage:
			p.Body = filltest.Any(t, processView{})
		case troublePage:
			p.Body = filltest.Any(t, troubleView{})
		}
		square(reflect.ValueOf(&p))
		filltest.Same(t, templates[name], "page", &p)
	})
	assert.Len(t, seen, len(templates))
}
