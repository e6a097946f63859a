package wire

import (
	"bytes"
	"encoding/json"
)

// Parse reads a message. Where it is none it gives an *Error to answer with.
func Parse(content []byte) (Message, error) {
	var m Message
	if err := json.Unmarshal(content, &m); err != nil {
		if !json.Valid(content) {
			return m, &Error{Code: ParseError, Message: "the content is no JSON"}
		}
		return Message{}, &Error{Code: InvalidRequest, Message: "the content is no message of JSON-RPC"}
	}
	if m.Version != Version || m.Method == "" && m.ID == nil {
		return m, &Error{Code: InvalidRequest, Message: "the content is no message of JSON-RPC 2.0"}
	}
	return m, nil
}

// Encode writes a value as JSON, without escapes that only pages of the web need.
func Encode(value any) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(value); err != nil {
		return nil, err
	}
	return bytes.TrimRight(b.Bytes(), "\n"), nil
}

// Decode reads parameters. What is missing stays zero; what has the wrong kind is an *Error.
func Decode(params json.RawMessage, into any) error {
	if len(params) == 0 {
		return nil
	}
	if err := json.Unmarshal(params, into); err != nil {
		return &Error{Code: InvalidParams, Message: "the parameters do not fit: " + err.Error()}
	}
	return nil
}
