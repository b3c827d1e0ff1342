package officetest

import (
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"tenthpoint/internal/headoffice/central"
)

// A Line is a bad line between a site and its office: it is cut after random counts of bytes, in
// either direction, and may be slow.
type Line struct {
	t      testing.TB
	o      *Office
	listen net.Listener
	folder string

	mu     sync.Mutex
	chance *rand.Rand
	most   int64 // bytes of a connection until it is cut, at most; zero is a good line
	slow   time.Duration
	Cuts   int
}

// NewLine lays a line to the office.
func NewLine(t testing.TB, o *Office, seed uint64) *Line {
	t.Helper()
	folder, err := os.MkdirTemp("", "line") // the path of a socket is short
	Must(t, err)
	l := &Line{t: t, o: o, folder: folder, chance: rand.New(rand.NewPCG(seed, seed))}
	l.listen, err = net.Listen("unix", filepath.Join(folder, ".s.PGSQL.5432"))
	Must(t, err)
	t.Cleanup(func() {
		_ = l.listen.Close()
		_ = os.RemoveAll(folder)
	})
	go l.serve()
	return l
}

// Cut cuts each connection after at most so many bytes; zero mends the line.
func (l *Line) Cut(most int64) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.most = most
}

// Slow holds up every packet.
func (l *Line) Slow(by time.Duration) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.slow = by
}

// Open is the office over the line, as a site signs in to it; an error where the line is cut.
func (l *Line) Open(letters string) (*central.Office, error) {
	config, err := pgx.ParseConfig(l.o.Server)
	if err != nil {
		return nil, err
	}
	return central.Open(ctx, fmt.Sprintf("host=%s dbname=%s user=%s", l.folder, config.Database, l.o.Site(letters)), l.o.Schema)
}

func (l *Line) serve() {
	for {
		near, err := l.listen.Accept()
		if err != nil {
			return
		}
		go l.carry(near)
	}
}

func (l *Line) carry(near net.Conn) {
	defer near.Close()
	config, err := pgx.ParseConfig(l.o.Server)
	if err != nil {
		return
	}
	far, err := net.Dial("unix", filepath.Join(config.Host, fmt.Sprintf(".s.PGSQL.%d", config.Port)))
	if err != nil {
		return
	}
	defer far.Close()
	l.mu.Lock()
	left, slow := int64(-1), l.slow
	if l.most > 0 {
		left = l.chance.Int64N(l.most)
	}
	l.mu.Unlock()
	ended := make(chan bool, 2)
	go l.pour(far, near, left, slow, ended)
	go l.pour(near, far, left, slow, ended)
	if <-ended {
		l.mu.Lock()
		l.Cuts++
		l.mu.Unlock()
	}
}

// pour copies one direction until its bytes are used up, which it tells.
func (l *Line) pour(to io.Writer, from io.Reader, left int64, slow time.Duration, ended chan<- bool) {
	packet := make([]byte, 4096)
	for {
		n, err := from.Read(packet)
		time.Sleep(slow)
		cut := left >= 0 && int64(n) > left
		if cut {
			n = int(left)
		}
		left -= int64(n)
		if left < 0 && !cut {
			left = -1
		}
		if _, failed := to.Write(packet[:n]); failed != nil || err != nil || cut {
			ended <- cut
			return
		}
	}
}
