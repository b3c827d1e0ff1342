//go:build postgres

package postgres

import (
	"context"
	"errors"
	"fmt"
	"net"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"tenthpoint/internal/book"
)

// A cable leads from a port of this computer to the server. It can be pulled, without a word to
// either side, and plugged in again.
type cable struct {
	t      *testing.T
	listen net.Listener
	mu     sync.Mutex
	pulled bool
}

func newCable(t *testing.T) *cable {
	t.Helper()
	listen, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	c := &cable{t: t, listen: listen}
	t.Cleanup(func() { _ = listen.Close() })
	go func() {
		for {
			desk, err := listen.Accept()
			if err != nil {
				return
			}
			server, err := net.Dial("unix", socket(t))
			if err != nil {
				_ = desk.Close()
				continue
			}
			go c.carry(desk, server)
			go c.carry(server, desk)
		}
	}()
	return c
}

func socket(t *testing.T) string {
	found, err := filepath.Glob(filepath.Join(folder(), ".s.PGSQL.*"))
	must(t, err)
	for _, path := range found {
		if filepath.Ext(path) != ".lock" {
			return path
		}
	}
	t.Fatal("the server has no socket")
	return ""
}

// carry passes on what one side says; while the cable is pulled that is lost.
func (c *cable) carry(from, to net.Conn) {
	defer to.Close()
	buffer := make([]byte, 32<<10)
	for {
		n, err := from.Read(buffer)
		if !c.isPulled() {
			if _, failed := to.Write(buffer[:n]); failed != nil {
				return
			}
		}
		if err != nil {
			return
		}
	}
}

func (c *cable) isPulled() bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.pulled
}

func (c *cable) pull(pulled bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.pulled = pulled
}

func (c *cable) address(schema string) string {
	return fmt.Sprintf("postgres://%s@%s/postgres?sslmode=disable&schema=%s", desk, c.listen.Addr(), schema)
}

// watched opens a book and counts the news of it.
func watched(t *testing.T, address string) (*Book, chan time.Time) {
	t.Helper()
	b, err := Open(ctx, address, book.Options{})
	must(t, err)
	watching, stop := context.WithCancel(ctx)
	var ended sync.WaitGroup
	t.Cleanup(func() { stop(); ended.Wait(); _ = b.Close() })
	news := make(chan time.Time, 100)
	ended.Go(func() { b.Watch(watching, func() { news <- time.Now() }) })
	return b, news
}

func appendTo(t *testing.T, b *Book) error {
	t.Helper()
	return b.Write(ctx, func(tx book.Tx) error {
		_, err := tx.Append(aFact())
		return err
	})
}

// What one desk does the others hear of within a second, and a desk's own acts are no news to it.
func TestOtherDesksHear(t *testing.T) {
	schema := newSchema(t)
	other := openedAs(t, desk, schema)
	b, news := watched(t, addressOf(desk, schema))
	time.Sleep(time.Second) // the watch begins
	for range 3 {
		must(t, appendTo(t, b))
	}
	select {
	case <-news:
		t.Error("a desk heard of its own act")
	case <-time.After(pollInterval + 200*time.Millisecond):
	}
	start := time.Now()
	must(t, appendTo(t, other))
	select {
	case <-news:
		if late := time.Since(start); late > time.Second {
			t.Errorf("heard of it %s later", late)
		}
	case <-time.After(10 * time.Second):
		t.Fatal("never heard of it")
	}
}

// A pulled cable gives a sentence and stops nothing else; when it is plugged in again work goes on,
// and whatever was acknowledged is there once.
func TestPulledCable(t *testing.T) {
	schema := newSchema(t)
	near := openedAs(t, desk, schema)
	c := newCable(t)
	b, news := watched(t, c.address(schema))
	must(t, appendTo(t, b))
	c.pull(true)
	until := time.Now().Add(20 * time.Second)
	for b.Trouble() == nil && time.Now().Before(until) {
		time.Sleep(50 * time.Millisecond)
	}
	if !errors.Is(b.Trouble(), errCut) {
		t.Fatalf("the cable is pulled, and the book says %v", b.Trouble())
	}
	start := time.Now()
	if err := appendTo(t, b); !errors.Is(err, errCut) {
		t.Errorf("entered over a pulled cable: %v", err)
	}
	if err := b.SaveDraft(book.Draft{Place: "load", ID: "L1", Texts: `{"truck":"7"}`}); !errors.Is(err, errCut) {
		t.Errorf("a draft went over a pulled cable: %v", err)
	}
	if took := time.Since(start); took > 4*connectTimeout {
		t.Errorf("a desk without a line waited %s", took)
	}
	must(t, appendTo(t, near)) // the others work on
	for len(news) > 0 {
		<-news
	}
	c.pull(false)
	select {
	case <-news:
	case <-time.After(20 * time.Second):
		t.Fatal("the cable is back, and nobody says so")
	}
	must(t, appendTo(t, b))
	must(t, b.SaveDraft(book.Draft{Place: "load", ID: "L1", Texts: `{"truck":"7"}`}))
	if head, _, err := b.Head(ctx); head.Seq != 3 || err != nil || b.Trouble() != nil {
		t.Errorf("%d facts, %v, %v", head.Seq, err, b.Trouble())
	}
	wantProblems(t, near, 0)
}
