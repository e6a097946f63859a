package json

import (
	"encoding/json"
	"reflect"

	"maltwright/cmd/write/key"
)

// Schema describes what Write makes of a type of answer, as JSON Schema 2020-12
// (json-schema.org). Open ones allow members that are not told, as later versions of the
// program may write; one that is not open allows none, for tests.
func Schema(title string, result any, open bool) []byte {
	s := shape{open}
	out := s.object(reflect.TypeOf(result))
	out["$schema"], out["title"] = "https://json-schema.org/draft/2020-12/schema", title
	out["properties"].(map[string]any)["format"] = map[string]any{"const": Format}
	out["required"] = append([]string{"format"}, out["required"].([]string)...)
	text, err := json.MarshalIndent(out, "", "  ")
	if err != nil {
		panic(err) // maps and words alone are always JSON
	}
	return append(text, '\n')
}

type shape struct{ open bool }

func (s shape) object(t reflect.Type) map[string]any {
	properties, required := map[string]any{}, []string{}
	for _, f := range key.Fields(t) {
		one := s.value(f.Type)
		if f.Doc != "" {
			one["description"] = f.Doc
		}
		properties[f.Key] = one
		if !f.Spare {
			required = append(required, f.Key)
		}
	}
	out := map[string]any{"type": "object", "properties": properties, "required": required}
	if !s.open {
		out["additionalProperties"] = false
	}
	return out
}

func (s shape) value(t reflect.Type) map[string]any {
	switch kind := t.Kind(); {
	case key.IsTold(t) && kind != reflect.Pointer:
		return map[string]any{"type": "string"}
	case key.IsMoment(t):
		return map[string]any{"type": []string{"string", "null"}, "format": "date-time"}
	case kind == reflect.Pointer:
		one := s.value(t.Elem())
		if word, ok := one["type"].(string); ok {
			one["type"] = []string{word, "null"}
		}
		return one
	case kind == reflect.Float64:
		out := map[string]any{"type": []string{"number", "null"}}
		if u, ok := key.UnitOf(t); ok && u.Key != "" {
			out["description"] = u.Doc
		}
		return out
	case kind == reflect.Struct:
		return s.object(t)
	case kind == reflect.Slice:
		return map[string]any{"type": "array", "items": s.value(t.Elem())}
	case kind == reflect.Map:
		return map[string]any{"type": "object", "additionalProperties": s.value(t.Elem())}
	case kind == reflect.Bool:
		return map[string]any{"type": "boolean"}
	case kind == reflect.String:
		return map[string]any{"type": "string"}
	}
	return map[string]any{"type": "integer"}
}
