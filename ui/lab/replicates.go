package lab

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
)

// replicates are the tests made of one sample, and people's decisions about them. The slices are
// shared: they are replaced, never modified.
type replicates struct{ moisture.Tests }

// testsOf are the tests that the book has of a load; nil where it has none.
func testsOf(l *load.Load) *replicates {
	if l == nil || l.Sample.Moisture == nil || l.Sample.Moisture.Bench == nil {
		return nil
	}
	return &replicates{l.Sample.Moisture.Bench.Tests}
}

// equal reports whether two lists hold as many tests with the same decisions: of
// one load, these are the same tests.
func (r replicates) equal(o replicates) bool {
	return len(r.Readings) == len(o.Readings) && slices.Equal(r.Exclusions, o.Exclusions) && slices.Equal(r.Overrides, o.Overrides)
}

// areIn reports whether these are the tests that the book has of a load.
func (r replicates) areIn(l *load.Load) bool {
	if inBook := testsOf(l); inBook != nil {
		return inBook.equal(r)
	}
	return len(r.Readings) == 0
}

// next is the number of the next test.
func (r replicates) next() int {
	n := 0
	for _, one := range r.Readings {
		n = max(n, one.Seq)
	}
	return n + 1
}

// counting returns the number of tests that count towards the mean.
func (r replicates) counting() int { return len(r.Readings) - len(r.Exclusions) }

// has reports whether there is a test with a number.
func (r replicates) has(seq int) bool {
	return slices.ContainsFunc(r.Readings, func(one moisture.Reading) bool { return one.Seq == seq })
}

// isExcluded reports whether a test is excluded from the mean.
func (r replicates) isExcluded(seq int) bool {
	return slices.ContainsFunc(r.Exclusions, func(e moisture.Exclusion) bool { return e.Test == seq })
}

// with are the tests and one more.
func (r replicates) with(one moisture.Reading) replicates {
	r.Readings = append(slices.Clone(r.Readings), one)
	return r
}

// without returns the tests with one excluded from the mean.
func (r replicates) without(e moisture.Exclusion) replicates {
	r.Exclusions = append(slices.Clone(r.Exclusions), e)
	return r
}

// counted are the tests with one counted again that was left out.
func (r replicates) counted(seq int) replicates {
	r.Exclusions = slices.DeleteFunc(slices.Clone(r.Exclusions), func(e moisture.Exclusion) bool { return e.Test == seq })
	return r
}

// overridden returns the tests with a flag that a manager accepted.
func (r replicates) overridden(o moisture.Override) replicates {
	r.Overrides = append(slices.Clone(r.Overrides), o)
	return r
}

// The names of tests in a draft, each before its number. They are stored in books
// and never change.
const (
	testText = "test." // a test made
	dropText = "drop." // a test left out
)

// draft are the tests as the texts of a draft, each with its own day, person and
// meter.
func (r replicates) draft() map[string]string {
	out := map[string]string{}
	for _, one := range r.Readings {
		out[testName(one)] = asText(one)
	}
	for _, e := range r.Exclusions {
		out[fmt.Sprintf("%s%04d", dropText, e.Test)] = asText(e)
	}
	return out
}

// testName is the name of a test in a draft. Sorted, the names of a sample's tests
// are in the order of the tests.
func testName(one moisture.Reading) string { return fmt.Sprintf("%s%04d", testText, one.Seq) }

// asText is a test or a decision as its facts write it: figures as text.
func asText(v any) string {
	body, err := json.Marshal(v)
	if err != nil { // every type of the bench can be written
		panic(err)
	}
	return string(body)
}

// replicatesIn reads the tests of a draft; there may be none. Overrides are only in the book. Each
// test must be valid on its own.
func replicatesIn(texts map[string]string, isSound func(moisture.Reading) error) (replicates, error) {
	var r replicates
	var wrong []error
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		switch text := texts[name]; {
		case strings.HasPrefix(name, testText):
			var one moisture.Reading
			wrong = append(wrong, json.Unmarshal([]byte(text), &one))
			if name != testName(one) {
				wrong = append(wrong, message.Invalid.Errorf("test %d stands under another number", one.Seq))
			} else {
				wrong = append(wrong, isSound(one))
			}
			r.Readings = append(r.Readings, one)
		case strings.HasPrefix(name, dropText):
			var e moisture.Exclusion
			wrong = append(wrong, json.Unmarshal([]byte(text), &e))
			r.Exclusions = append(r.Exclusions, e)
		}
	}
	return r, errors.Join(wrong...)
}

// continues returns why tests do not begin with those in the book.
func (r replicates) continues(inBook replicates) error {
	for i, one := range inBook.Readings {
		if i >= len(r.Readings) || asText(one) != asText(r.Readings[i]) {
			return message.Invalid.Errorf("the book has other tests by now")
		}
	}
	return nil
}
