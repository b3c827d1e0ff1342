package place

import (
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// OnServer reports whether a book is named by the address of a server, and not by the path of a file.
func OnServer(at string) bool {
	return strings.HasPrefix(at, "postgres://") || strings.HasPrefix(at, "postgresql://")
}

// Beside is the folder for what belongs to a book and is not in it: rates, papers, exports. A file
// has it beside itself; for a book on a server each computer has one in the person's data folder,
// named after the book.
func Beside(at string) string {
	if !OnServer(at) {
		return filepath.Dir(at)
	}
	data, err := os.UserConfigDir()
	if err != nil {
		data = os.TempDir()
	}
	return filepath.Join(data, "tenthpoint", "servers", Name(at))
}

// Name is a short name for a book, fit for a file: its own without its ending, or of a book on a
// server the host, the database and the schema.
func Name(at string) string {
	if !OnServer(at) {
		return strings.TrimSuffix(filepath.Base(at), filepath.Ext(at))
	}
	u, err := url.Parse(at)
	if err != nil {
		return "book"
	}
	words := []string{u.Hostname(), strings.Trim(u.Path, "/"), u.Query().Get("schema")}
	return strings.Trim(notInNames.ReplaceAllString(strings.Join(words, "-"), "-"), "-.")
}

// notInNames are the characters that some file systems refuse in names.
var notInNames = regexp.MustCompile(`[^A-Za-z0-9._]+`)
