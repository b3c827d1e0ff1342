// Package page makes the page of `tenth checker`: one HTML file that works from a disk, without a
// server and without a network.
//
// In it are the engine (package checker as WebAssembly, compressed), the house or none, the texts of
// every language that the engine says, and a page of plain HTML around them. A Content-Security-Policy
// lets nothing else in: no script but the one whose hash it names, no connection at all.
//
// engine.wasm.gz and what lies beside it are made by `go run ./cmd/task checker`, byte for byte the
// same from the same source and the same Go; engine.sum holds the hash of all that they are made of.
package page

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"html"
	"io"
	"strings"

	"tenthpoint/internal/checker"
	"tenthpoint/internal/i18n"
)

var (
	//go:embed engine.wasm.gz
	engine []byte
	//go:embed texts.json
	texts []byte
	//go:embed wasm_exec.js
	wasmExec string
	//go:embed page.js
	script string
	//go:embed page.css
	style string
)

// EngineHash is the SHA-256 of the engine, which every page shows and a release names.
func EngineHash() string {
	sum := sha256.Sum256(engine)
	return hex.EncodeToString(sum[:])
}

// Write writes the page of a house, or of every house. The same house gives the same bytes.
func Write(w io.Writer, h checker.House) error {
	house, err := json.Marshal(h)
	if err != nil {
		return err
	}
	catalogs, codes, err := catalogs()
	if err != nil {
		return err
	}
	title := "Check a scale ticket"
	if h.Business != "" {
		title += " · " + h.Business
	}
	code := wasmExec + "\n" + script
	_, err = fmt.Fprintf(w, frame, policy(code), html.EscapeString(title), style, strings.Join(codes, " "), EngineHash(),
		letters(packed(house)), letters(packed(catalogs)), letters(engine), code)
	return err
}

var letters = base64.StdEncoding.EncodeToString

// packed is data as the page holds it.
func packed(data []byte) []byte {
	var out bytes.Buffer
	w, _ := gzip.NewWriterLevel(&out, gzip.BestCompression) // the level is one there is
	w.Write(data)                                           // memory takes everything
	w.Close()
	return out.Bytes()
}

// policy lets the page's own script and style run, and nothing in or out.
func policy(code string) string {
	return fmt.Sprintf("default-src 'none'; script-src '%s' 'wasm-unsafe-eval'; style-src '%s'; connect-src 'none'; base-uri 'none'; form-action 'none'", allowed(code), allowed(style))
}

// allowed names a text of the page by its hash, as a policy does.
func allowed(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// catalogs are the catalogs of all languages with those texts alone that the engine can say, and the
// codes of the languages.
func catalogs() (file []byte, codes []string, err error) {
	var keys []string
	if err := json.Unmarshal(texts, &keys); err != nil {
		return nil, nil, err
	}
	said := map[string]bool{}
	for _, key := range keys {
		said[key] = true
	}
	all := []json.RawMessage{}
	for _, code := range i18n.Codes() {
		codes = append(codes, code)
		if c, has := i18n.Catalog(code); has {
			part, err := c.Part(func(key string) bool { return said[key] })
			if err != nil {
				return nil, nil, err
			}
			all = append(all, part)
		}
	}
	file, err = json.Marshal(all)
	return file, codes, err
}

// frame is the page before its engine runs.
const frame = `<!doctype html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="%s">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>%s</title>
<style>%s</style></head>
<body><main id="page" data-languages="%s" data-made="%s">
<p id="loading" role="status">One moment … · Un instant … · Un momento …</p>
<noscript><p>This page needs JavaScript, which runs in the page alone. An iPhone shows a file without it: open the page on a computer, or from a web address.</p><p lang="fr">Cette page a besoin de JavaScript, qui ne s'exécute que dans la page. Un iPhone montre un fichier sans lui : ouvrez la page sur un ordinateur, ou à une adresse web.</p><p lang="es">Esta página necesita JavaScript, que se ejecuta solo en la página. Un iPhone muestra un archivo sin él: ábrala en un ordenador o desde una dirección web.</p></noscript>
</main>
<script type="text/plain" id="house">%s</script>
<script type="text/plain" id="catalogs">%s</script>
<script type="text/plain" id="engine">%s</script>
<script>%s</script></body></html>
`
