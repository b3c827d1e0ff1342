package model

import "slices"

// Selection is the rows of a list with the one that is chosen. The choice survives
// other rows by its key.
type Selection struct {
	Rows   []Row
	Chosen int // index, or -1
}

// Replace takes other rows. The chosen one stays chosen if its key is still among
// them.
func (s *Selection) Replace(rows []Row) {
	key := s.Key()
	s.Rows = rows
	s.Chosen = s.Find(key)
}

// Find is the index of a row by its key, or -1; no row has an empty key.
func (s *Selection) Find(key string) int {
	if key == "" {
		return -1
	}
	return slices.IndexFunc(s.Rows, func(r Row) bool { return r.Key == key })
}

// Key is the key of the chosen row, or "".
func (s *Selection) Key() string {
	if !s.Has(s.Chosen) {
		return ""
	}
	return s.Rows[s.Chosen].Key
}

// Has reports whether an index is a row's.
func (s *Selection) Has(i int) bool { return i >= 0 && i < len(s.Rows) }

// Nearest is the nearest index that is a row's; -1 where there are no rows.
func (s *Selection) Nearest(i int) int {
	if i = min(i, len(s.Rows)-1); i < 0 && len(s.Rows) > 0 {
		return 0
	}
	return max(i, -1)
}
