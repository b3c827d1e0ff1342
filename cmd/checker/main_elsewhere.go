//go:build !js

package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "this is the engine of a page, and runs in a browser; see the package comment")
	os.Exit(2)
}
