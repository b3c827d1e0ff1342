// Command checker is what the page of `tenth checker` runs: package checker compiled to WebAssembly,
// and a reader of QR codes. It is built by `go run ./cmd/task checker` and lies compressed in
// internal/checker/page; nobody runs it by itself.
package main
