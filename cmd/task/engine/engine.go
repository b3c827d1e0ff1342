// Package engine builds the engine of the page that checks tickets: cmd/checker as WebAssembly,
// compressed, with what the page needs beside it. It lies in the repository, so that a program built
// without this chore has it; a sum of everything it is made of tells when it is behind its source.
package engine

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// The folder of the page, and the files in it that are made here.
const (
	folder   = "internal/checker/page"
	wasmFile = "engine.wasm.gz"
	textFile = "texts.json"
	execFile = "wasm_exec.js"
	sumFile  = "engine.sum"
)

// command is the package that is built.
const command = "./cmd/checker"

// flags make the build the same on every machine, and small: nothing is inlined, and what only a
// debugger reads is left out.
var flags = []string{"-trimpath", "-buildvcs=false", "-gcflags=all=-l", "-ldflags=-s -w -buildid="}

// Build makes the engine anew in a repository.
func Build(root string) error {
	parts, err := inputs(root)
	if err != nil {
		return err
	}
	wasm, err := compiled(root)
	if err != nil {
		return err
	}
	texts, err := textsOf(parts)
	if err != nil {
		return err
	}
	runtime, err := wasmExec(root)
	if err != nil {
		return err
	}
	for name, data := range map[string][]byte{wasmFile: wasm, textFile: texts, execFile: runtime, sumFile: []byte(sumOf(parts) + "\n")} {
		if err := os.WriteFile(filepath.Join(root, folder, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// Stale reports whether the engine is behind its source. It compares sums and builds nothing.
func Stale(root string) (bool, error) {
	parts, err := inputs(root)
	if err != nil {
		return false, err
	}
	kept, err := os.ReadFile(filepath.Join(root, folder, sumFile))
	if err != nil {
		return true, nil // it was never built
	}
	return strings.TrimSpace(string(kept)) != sumOf(parts), nil
}

// compiled is the program, compressed.
func compiled(root string) ([]byte, error) {
	temp, err := os.MkdirTemp("", "engine")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(temp)
	file := filepath.Join(temp, "engine.wasm")
	if _, err := goTool(root, append(append([]string{"build"}, flags...), "-o", file, command)...); err != nil {
		return nil, err
	}
	raw, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(raw); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return packed.Bytes(), nil
}

// wasmExec is the script of Go's own that a browser runs WebAssembly with.
func wasmExec(root string) ([]byte, error) {
	goroot, err := goTool(root, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec.js"))
}

// goTool runs go for WebAssembly.
func goTool(root string, args ...string) ([]byte, error) {
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=")
	var fault bytes.Buffer
	cmd.Stderr = &fault
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, fault.String())
	}
	return out, nil
}
