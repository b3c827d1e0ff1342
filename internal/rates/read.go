package rates

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"tenthpoint/internal/tomlfile"
)

// Read reads one edition. The error, when there is one, is a
// [tomlfile.Problems] with every mistake in the file.
func Read(name string, text []byte) (*Edition, error) {
	file := tomlfile.Parse(name, text)
	if err := file.Problems().Err(); err != nil {
		return nil, err
	}
	sum := sha256.Sum256(text)
	e := &Edition{File: name, Text: slices.Clone(text), Hash: hex.EncodeToString(sum[:])}
	r := reader{e: e, root: file.Root()}
	r.read()
	file.Root().RejectUnknownKeys()
	if err := file.Problems().Err(); err != nil {
		return nil, err
	}
	return e, nil
}

// reader fills an edition from a file, table by table. It reports what is
// wrong and reads on, so that all mistakes are found at once; a cell that could
// not be read is not [Cell.Given] and is compared with nothing.
type reader struct {
	e    *Edition
	root *tomlfile.Table
	// noBushel marks an edition that states no bushel weight at all.
	noBushel bool
}

func (r *reader) read() {
	head, _ := r.root.Table("edition", true)
	r.head(head)
	r.origin()
	r.units()
	r.rounding()
	r.dockage()
	r.shrink()
	r.handling()
	r.drying()
	r.discounts()
	shares, _ := r.root.Table("shares", true)
	r.e.Shares = Shares{Remainder: shares.Choice("remainder", "first", "last", "largest"), Row: shares.Place("remainder")}
	r.order(head)
}
