package main

import (
	"encoding/json"
	"syscall/js"

	"tenthpoint/internal/checker"
	"tenthpoint/internal/checker/square"
)

// opened is the checker of the page; nil until the page has given its house.
var opened *checker.Checker

func main() {
	js.Global().Set("tenthChecker", js.ValueOf(map[string]any{
		"open": answer(open), "add": answer(add),
		"body":  answer(func(a []js.Value) string { return opened.Body(a[0].String(), a[1].String()) }),
		"rest":  answer(func(a []js.Value) string { return opened.Rest(a[0].String()) }),
		"form":  answer(func(a []js.Value) string { return opened.Form(a[0].String(), a[1].String()) }),
		"check": answer(func(a []js.Value) string { return opened.Check(a[0].String(), a[1].String()) }),
		"more":  answer(func(a []js.Value) string { return opened.More(a[0].String(), a[1].String()) }),
		"work":  answer(work), "scan": answer(scan),
	}))
	select {}
}

// answer makes a function of the page of one that answers with a text.
func answer(f func([]js.Value) string) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any { return f(args) })
}

// open gives the checker what the page holds: the house, and the catalogs. It answers with what is
// wrong, or with nothing.
func open(args []js.Value) string {
	var house checker.House
	var catalogs []json.RawMessage
	if err := json.Unmarshal([]byte(args[0].String()), &house); err != nil {
		return err.Error()
	}
	if err := json.Unmarshal([]byte(args[1].String()), &catalogs); err != nil {
		return err.Error()
	}
	c, err := checker.New(house, catalogs...)
	if err != nil {
		return err.Error()
	}
	opened = c
	return ""
}

// add opens a posted file: language, name and text.
func add(args []js.Value) string {
	return opened.Added(args[0].String(), checker.File{Name: args[1].String(), Text: args[2].String()})
}

// work settles what was typed: language, edition, day, and the boxes as JSON.
func work(args []js.Value) string {
	typed := map[string]string{}
	if err := json.Unmarshal([]byte(args[3].String()), &typed); err != nil {
		return err.Error()
	}
	return opened.Work(args[0].String(), args[1].String(), args[2].String(), typed)
}

// scan reads the square in a picture: its points as red, green, blue and alpha, its width and height.
func scan(args []js.Value) string {
	points := make([]byte, args[0].Get("length").Int())
	js.CopyBytesToGo(points, args[0])
	return square.Read(points, args[1].Int(), args[2].Int())
}
