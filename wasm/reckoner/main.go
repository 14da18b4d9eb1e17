//go:build js && wasm

// Command reckoner is the page's engine module. It registers one function,
// thawbook.call(method, payload), says that it is ready, and waits.
package main

import (
	"syscall/js"

	"thawbook/wasm/door"
)

func main() {
	d := &door.Door{}
	global := js.Global()
	if report := global.Get("thawbookProgress"); report.Type() == js.TypeFunction {
		d.Progress = func(done, total int) { report.Invoke(done, total) }
	}
	global.Set("thawbook", map[string]any{"call": js.FuncOf(func(_ js.Value, args []js.Value) any {
		a := d.Call(args[0].String(), []byte(args[1].String()))
		answer := map[string]any{"json": string(a.JSON)}
		if a.Bytes != nil {
			bytes := global.Get("Uint8Array").New(len(a.Bytes))
			js.CopyBytesToJS(bytes, a.Bytes)
			answer["bytes"] = bytes
		}
		return answer
	})})
	if ready := global.Get("thawbookReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {}
}
