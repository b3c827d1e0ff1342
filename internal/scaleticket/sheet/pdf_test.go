package sheet

import (
	"bytes"
	"errors"
	"strings"
	"sync"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

func pdfBytes(t testing.TB, d scaleticket.Document, size Size) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := PDF(&b, d, size, Options{}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestSameTicketSameBytes: a reprint in February is compared with November's paper byte by byte,
// and two desks may print at once.
func TestSameTicketSameBytes(t *testing.T) {
	for _, c := range tickettest.Table {
		first := pdfBytes(t, scaleticket.Compose(c.Make(t)), HalfLetter)
		var all sync.WaitGroup
		for range 3 {
			ticket := c.Make(t)
			all.Go(func() {
				var b bytes.Buffer
				if err := PDF(&b, scaleticket.Compose(ticket), HalfLetter, Options{}); err != nil || !bytes.Equal(first, b.Bytes()) {
					t.Errorf("%s: the second time the paper is another (%v)", c.Name, err)
				}
			})
		}
		all.Wait()
	}
}

// TestOtherFactsOtherBytes proves that the comparison can fail.
func TestOtherFactsOtherBytes(t *testing.T) {
	one := tickettest.Corn(t)
	other := tickettest.Corn(t)
	other.Load.Details.Driver = "E. Driver"
	if bytes.Equal(pdfBytes(t, scaleticket.Compose(one), HalfLetter), pdfBytes(t, scaleticket.Compose(other), HalfLetter)) {
		t.Error("another driver, and the same paper")
	}
}

// TestPaperHasTheDateOfItsTicket: the date inside the PDF is when the ticket
// was issued, not when it was printed.
func TestPaperHasTheDateOfItsTicket(t *testing.T) {
	paper := string(pdfBytes(t, scaleticket.Compose(tickettest.Corn(t)), A5))
	for _, want := range []string{"/CreationDate (D:20261014152211)", "/ModDate (D:20261014152211)"} {
		if !strings.Contains(paper, want) {
			t.Errorf("the paper lacks %s", want)
		}
	}
}

// TestPaperSizes reads the page size out of the PDF itself.
func TestPaperSizes(t *testing.T) {
	d := scaleticket.Compose(tickettest.Corn(t))
	for size, want := range map[Size]string{HalfLetter: "/MediaBox [0 0 396.00 612.00]", A5: "/MediaBox [0 0 419.53 595.28]"} {
		if paper := string(pdfBytes(t, d, size)); !strings.Contains(paper, want) {
			t.Errorf("size %d: no %s", size, want)
		}
	}
}

var errFull = errors.New("no space left")

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestPaperThatCannotBeWritten(t *testing.T) {
	err := PDF(fullDisk{}, scaleticket.Compose(tickettest.Corn(t)), HalfLetter, Options{})
	if !errors.Is(err, errFull) || !errortest.Kind(message.Storage).Met(err) {
		t.Errorf("error %v", err)
	}
	label, _ := scaleticket.SampleLabel(tickettest.Corn(t))
	if err := Label(fullDisk{}, label); !errortest.Kind(message.Storage, "S-2041").Met(err) {
		t.Errorf("error %v", err)
	}
}
