package elevator

import (
	"slices"
	"strings"

	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/message"
)

// Bin is a receiving pit or a storage bin.
type Bin struct {
	ID        string `json:"id"`
	Name      string `json:"name"`
	Commodity string `json:"commodity,omitempty"`
	// Lot is the grain kept apart in it, such as an identity-preserved variety; empty for any.
	Lot string `json:"lot,omitempty"`
	// Shape is its form and size; none where nobody measured it.
	Shape shape.Shape `json:"shape,omitzero"`
	// Paths are the bins that grain received here usually goes on to.
	Paths []Path `json:"paths,omitempty"`
}

// Path is a usual path of grain out of a pit.
type Path struct {
	Commodity string `json:"commodity,omitempty"` // empty is any that has no path of its own
	To        string `json:"to"`
}

// Onward is the bin that a grain received here goes on to; empty where it stays.
func (b Bin) Onward(commodity string) string {
	to := ""
	for _, p := range b.Paths {
		switch p.Commodity {
		case commodity:
			return p.To
		case "":
			to = p.To
		}
	}
	return to
}

// Kind names the fact in the journal.
func (Bin) Kind() string { return "house.bin" }

// Check returns what is wrong with the bin, or nil.
func (b Bin) Check() error {
	if strings.TrimSpace(b.ID) == "" {
		return message.Invalid.Errorf("a pit or bin has a short name; it is empty")
	}
	for i, p := range b.Paths {
		switch {
		case p.To == "" || p.To == b.ID:
			return message.Invalid.Errorf("the usual path of %v leads to another bin; name that one", b.ID)
		case slices.ContainsFunc(b.Paths[:i], func(o Path) bool { return o.Commodity == p.Commodity }):
			return message.Invalid.Errorf("%v has two usual paths for one grain; keep one of %v and %v", b.ID, b.Paths[0].To, p.To)
		}
	}
	return b.Shape.Check()
}
