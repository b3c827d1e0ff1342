package place

import (
	"errors"
	"testing"

	"tenthpoint/internal/message"
)

func TestNetworkDriveIsNamed(t *testing.T) {
	if err := check("/mnt/house/house.book", func(string) string { return "NFS" }); !errors.Is(err, message.Refused) {
		t.Errorf("%v", err)
	}
	for _, path := range []string{"/home/dropboxes/a.book", "/home/mae/Onedriver/a.book", "/home/mae/a.book"} {
		if err := check(path, func(string) string { return "" }); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	if kind := networkDrive(t.TempDir()); kind != "" {
		t.Errorf("the temporary folder is on %s", kind)
	}
}
