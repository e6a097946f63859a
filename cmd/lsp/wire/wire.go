// Package wire holds what goes between an editor and the server: frames, messages of
// JSON-RPC 2.0, and the structures of the Language Server Protocol 3.17 that are used here.
//
// A frame is a header with the length of its content in bytes, an empty line, and the
// content: one message as JSON (frame.go, message.go). The structures are named as the
// protocol names them, and hold only what the server reads or writes; a test holds their
// names, kinds and which fields may be missing against the published model of the protocol.
// What a structure of ours has as a pointer, or leaves out where it is empty, is optional
// there. Lines and columns are counted from 0, columns in the encoding that was agreed.
package wire

import "encoding/json"

// Version is the version of JSON-RPC, which stands in each message.
const Version = "2.0"

// Message is one message: a request has a method and an ID, a notification a method alone,
// an answer an ID and a result or an error.
type Message struct {
	Version string          `json:"jsonrpc"`
	ID      *ID             `json:"id,omitempty"`
	Method  string          `json:"method,omitempty"`
	Params  json.RawMessage `json:"params,omitempty"`
	Result  json.RawMessage `json:"result,omitempty"`
	Error   *Error          `json:"error,omitempty"`
}

// ID names a request: a number or a text, as JSON. It is given back as it came.
type ID string

// UnmarshalJSON takes a number, a text or null.
func (id *ID) UnmarshalJSON(b []byte) error {
	var n json.Number
	var s string
	if string(b) != "null" && json.Unmarshal(b, &n) != nil && json.Unmarshal(b, &s) != nil {
		return &Error{Code: InvalidRequest, Message: "an id is a number or a text"}
	}
	*id = ID(b)
	return nil
}

// MarshalJSON writes it as it came.
func (id ID) MarshalJSON() ([]byte, error) {
	if id == "" {
		return []byte("null"), nil
	}
	return []byte(id), nil
}

// Error is why a request was not answered.
type Error struct {
	Code    int             `json:"code"`
	Message string          `json:"message"`
	Data    json.RawMessage `json:"data,omitempty"`
}

// Error is the sentence.
func (e *Error) Error() string { return e.Message }

// Codes of errors, of JSON-RPC and of the protocol.
const (
	ParseError           = -32700
	InvalidRequest       = -32600
	MethodNotFound       = -32601
	InvalidParams        = -32602
	InternalError        = -32603
	ServerNotInitialized = -32002
	RequestFailed        = -32803
	ServerCancelled      = -32802
	ContentModified      = -32801
	RequestCancelled     = -32800
)
