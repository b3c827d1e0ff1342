//go:build !linux

package place

import (
	"path/filepath"
	"strings"
)

// networkDrive recognises a UNC path. A drive letter or mount point of a network folder is not
// detected here.
func networkDrive(folder string) string {
	if strings.HasPrefix(filepath.ToSlash(folder), "//") {
		return "UNC"
	}
	return ""
}
