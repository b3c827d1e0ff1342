package load

import (
	"reflect"
	"testing"
)

// The short way reads just what the general one does, and leaves it the rest.
func TestSettledIsReadAlike(t *testing.T) {
	for body, short := range map[string]bool{
		`{"edition":"corn-2026","edition_hash":"ab","engine":"2","figures":{"net":"28000 lb","payable":"2803.51 $"},"law":"cd","working":"ef"}`: true,
		`{"edition":"corn-2026","edition_hash":"ab","figures":{},"working":"ef"}`:                                                               true,
		`{"edition":"corn \u00e9","edition_hash":"ab","figures":{"net":"1 lb"},"working":"ef"}`:                                                 false,
		`{"edition":"corn","edition_hash":"ab","engine":"2","figures":{"net":"1/3 lb"},"working":"e\"f"}`:                                       false,
	} {
		quick, ok := plainSettled(body)
		if ok != short {
			t.Errorf("%s: %v", body, ok)
		}
		general, err := read[Settled]([]byte(body))
		if err != nil {
			t.Fatal(err)
		}
		if ok && !reflect.DeepEqual(Fact(quick), general) {
			t.Errorf("%s: %+v, want %+v", body, quick, general)
		}
	}
	for _, body := range []string{
		`{"edition":"corn","colour":"red","figures":{},"working":"ef"}`, `{"edition":{"a":"b"},"figures":{}}`, `{"figures":{"net":"heavy"}}`, `{"figures":"none"}`, `{"engine":"0"}`,
	} {
		if f, err := readSettled([]byte(body)); err == nil {
			t.Errorf("%s was read as %+v", body, f)
		}
	}
}
