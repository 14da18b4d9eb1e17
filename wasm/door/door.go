// Package door answers the page's calls: a method's name and a JSON payload in,
// JSON and perhaps a column of numbers out. It holds the one open book. It is
// plain Go, tested natively; wasm/reckoner only carries its answers to the page.
package door

import (
	"bytes"
	"encoding/json"
	"fmt"

	"thawbook/engine"
	"thawbook/engine/diag"
)

// Door holds the open book between calls. It is not for use from two goroutines.
type Door struct {
	book  *engine.Book
	aside aside
	// tried is a what-if on book, shown in its place; nil when there is none.
	tried *engine.Book
	// told is the reckoning that was told last.
	told *engine.Reckoning
	// Progress, when not nil, is told how far a long reckoning is.
	Progress func(done, total int)
}

// Answer is what a call comes to. Bytes is nil for most methods.
type Answer struct {
	JSON  []byte
	Bytes []byte
}

// Failure is how a call that cannot be answered is told.
type Failure struct {
	Code    diag.Code `json:"code"`
	Message string    `json:"message"`
	Hint    string    `json:"hint,omitempty"`
}

// Codes of the door itself.
const (
	unknownMethod diag.Code = "unknown-method"
	badPayload    diag.Code = "bad-payload"
	nothingOpen   diag.Code = "nothing-open"
	broke         diag.Code = "internal"
)

// Error is the message.
func (f Failure) Error() string { return f.Message }

// Call answers one call. It never panics: what went wrong inside comes back as
// {"error": …}, and the open book stays open.
func (d *Door) Call(method string, payload []byte) (a Answer) {
	defer func() {
		if r := recover(); r != nil {
			a = failed(Failure{broke, fmt.Sprintf("the reckoner stumbled: %v", r), "save your sheet and reload"})
		}
	}()
	handler, ok := d.handlers()[method]
	if !ok {
		return failed(Failure{unknownMethod, fmt.Sprintf("no method is called %q", method), ""})
	}
	answer, bytes, err := handler(payload)
	if err != nil {
		return failed(err)
	}
	text, err := json.Marshal(answer)
	if err != nil {
		return failed(err)
	}
	return Answer{text, bytes}
}

type handler func(payload []byte) (answer any, bytes []byte, err error)

func (d *Door) handlers() map[string]handler {
	return map[string]handler{
		"open":      d.open,
		"edit":      d.edit,
		"reckon":    d.reckon,
		"column":    d.column,
		"explain":   d.explain,
		"price":     d.price,
		"functions": d.functions,
		"source":    d.source,
		"try":       d.try,
		"write":     d.write,
		"shape":     d.shape,
		"formula":   d.formula,
		"compare":   d.compare,
		"flip":      d.flip,
		"movers":    d.movers,
		"worth":     d.worth,
		"find":      d.find,
		"layin":     d.layIn,
		"gear":      d.gear,
	}
}

func failed(err error) Answer {
	var f Failure
	switch e := err.(type) {
	case Failure:
		f = e
	case diag.Diagnostic:
		f = Failure{e.Code, e.Message, e.Hint}
	default:
		f = Failure{Code: broke, Message: err.Error()}
	}
	text, err := json.Marshal(map[string]Failure{"error": f})
	if err != nil {
		panic("door: a failure does not become JSON: " + err.Error())
	}
	return Answer{JSON: text}
}

// read decodes a payload and refuses keys it does not know.
func read(payload []byte, into any) error {
	decoder := json.NewDecoder(bytes.NewReader(payload))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(into); err != nil {
		return Failure{badPayload, "the payload does not read: " + err.Error(), ""}
	}
	return nil
}

func (d *Door) needBook() error {
	if d.book == nil {
		return Failure{nothingOpen, "no sheet is open", "open one first"}
	}
	return nil
}
