package store

import (
	"context"
	"database/sql"
	"errors"
	"slices"
	"sync"
)

// mostStatements bounds what is kept prepared, should somebody put figures
// into SQL text.
const mostStatements = 100

// The statements of the writer stay prepared from one write to the next:
// preparing takes longer than running. One that is met for the first time
// inside a write cannot be prepared for good there, because the write holds
// the only connection; it is noted, and prepared before the next write.
type statements struct {
	mu    sync.Mutex
	ready map[string]*sql.Stmt
	noted []string
}

// find returns a statement that is ready, or notes it.
func (s *statements) find(query string) (*sql.Stmt, bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	prepared, ok := s.ready[query]
	if !ok && !slices.Contains(s.noted, query) && len(s.ready)+len(s.noted) < mostStatements {
		s.noted = append(s.noted, query)
	}
	return prepared, ok
}

// prepare readies what was noted. The lock is not held meanwhile: a write
// under way has the connection this waits for, and may be about to look here.
// What cannot be prepared is left to fail where it is used.
func (s *statements) prepare(ctx context.Context, db *sql.DB) {
	s.mu.Lock()
	noted := s.noted
	s.noted = nil
	s.mu.Unlock()
	for _, query := range noted {
		prepared, err := db.PrepareContext(ctx, query)
		if err != nil {
			continue
		}
		s.mu.Lock()
		if s.ready == nil {
			s.ready = map[string]*sql.Stmt{}
		}
		other := s.ready[query]
		s.ready[query] = prepared
		s.mu.Unlock()
		if other != nil {
			_ = other.Close() // closes once nobody uses it
		}
	}
}

func (s *statements) close() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	var found error
	for _, prepared := range s.ready {
		found = errors.Join(found, prepared.Close())
	}
	s.ready = nil
	return found
}
