package installer

import (
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// checksums writes the hash of each thing made, in the form that sha256sum -c reads.
func (r *release) checksums() error {
	var b strings.Builder
	for _, path := range r.made {
		sum, err := sumOf(path)
		if err != nil {
			return err
		}
		fmt.Fprintf(&b, "%x  %s\n", sum, filepath.Base(path))
	}
	return put(r.result("SHA256SUMS"), []byte(b.String()))
}

func sumOf(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	h := sha256.New()
	_, err = io.Copy(h, f)
	return h.Sum(nil), err
}
