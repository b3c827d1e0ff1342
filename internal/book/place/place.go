// Package place checks where a book may be stored: on a local disk, and not where other computers
// write as well.
package place

import (
	"path/filepath"
	"strings"

	"tenthpoint/internal/message"
)

// syncedFolders are prefixes of the names of synced folders, in small letters.
var syncedFolders = []string{"dropbox", "onedrive", "google drive", "googledrive", "icloud", "nextcloud", "owncloud", "syncthing", "box sync", "pcloud", "mega sync"}

// Check refuses to write in a book on a network drive, where SQLite's locks and its write-ahead log
// cannot be relied on, or in a folder that is synced, where another computer's copy may be put over
// the book at any moment. The caller may override this.
func Check(path string) error { return check(path, networkDrive) }

func check(path string, kindOf func(folder string) string) error {
	folder := filepath.Dir(path)
	if kind := kindOf(folder); kind != "" {
		return message.Refused.Errorf("the book %s lies on a network drive (%s). Two computers would damage it there, and a lost connection may take facts with it. Put it on a disk of this computer, or insist with --any-place", path, kind)
	}
	for _, part := range strings.Split(filepath.ToSlash(folder), "/") {
		for _, name := range syncedFolders {
			if rest, is := strings.CutPrefix(strings.ToLower(part), name); is && !startsWithLetter(rest) {
				return message.Refused.Errorf("the book %s lies in %s, a folder that is synced with other places: a copy of another moment may be put over it. Put it elsewhere and back it up into that folder, or insist with --any-place", path, part)
			}
		}
	}
	return nil
}

// startsWithLetter distinguishes "Dropboxes" from "Dropbox (House)".
func startsWithLetter(text string) bool {
	return text != "" && strings.ToLower(text[:1]) != strings.ToUpper(text[:1])
}
