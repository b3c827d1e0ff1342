package journal

import (
	"encoding/binary"
	"tenthpoint/internal/digest"
)

// Genesis is the predecessor hash of the first fact: the SHA-256 of the text "tenthpoint journal,
// before the first fact".
const Genesis = "1a9d9c9e64725dd4b59caf18053b9577f3cb026414ec96d083d5d6917776ee8f"

// chainForm names the way a fact is spelled out for hashing. A change to the
// spelling needs a new name, so that no two spellings can be confused.
const chainForm = "tenthpoint fact, form 1"

// Link makes the entry the fact after prev; with a nil prev it is the first fact. Of prev only Seq
// and Hash are read.
func Link(prev *Fact, d Entry) Fact {
	f := Fact{
		Seq: 1, Prev: Genesis,
		At: d.At, Who: d.Who, Desk: d.Desk, Kind: d.Kind, Subject: d.Subject, Body: d.Body,
	}
	if prev != nil {
		f.Seq, f.Prev = prev.Seq+1, prev.Hash
	}
	f.Hash = f.sum()
	return f
}

// sum is the hash the fact ought to carry: SHA-256 of the form's name, the
// previous hash, the number and every field, each as eight bytes of length
// (big-endian) and then its bytes; the number is itself eight bytes. With the
// lengths no two different facts are spelled alike.
func (f Fact) sum() string {
	spelled := make([]byte, 0, 512)
	for _, text := range []string{chainForm, f.Prev} {
		spelled = appendPart(spelled, text)
	}
	spelled = binary.BigEndian.AppendUint64(spelled, 8)
	spelled = binary.BigEndian.AppendUint64(spelled, uint64(f.Seq))
	for _, text := range []string{f.At, f.Who, f.Desk, f.Kind, f.Subject} {
		spelled = appendPart(spelled, text)
	}
	spelled = appendPart(spelled, f.Body)
	return digest.Of(spelled)
}

func appendPart[T string | []byte](spelled []byte, part T) []byte {
	spelled = binary.BigEndian.AppendUint64(spelled, uint64(len(part)))
	return append(spelled, part...)
}
