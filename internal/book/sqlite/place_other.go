//go:build !linux

package sqlite

import (
	"path/filepath"
	"strings"
)

// networkDrive recognises a folder named by its computer. A drive letter or mount
// point of such a folder is not told from a disk here.
func networkDrive(folder string) string {
	if strings.HasPrefix(filepath.ToSlash(folder), "//") {
		return "UNC"
	}
	return ""
}
