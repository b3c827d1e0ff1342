package desk

import "context"

// An Actor is where an act is done: at a desk, where it is a transaction of its
// own, or in a batch, where it is part of the one under way.
type Actor interface {
	do(ctx context.Context, act func(*Batch) error) error
}

// result does an act that answers with something.
func result[T any](ctx context.Context, at Actor, act func(*Batch) (T, error)) (out T, err error) {
	err = at.do(ctx, func(w *Batch) error {
		out, err = act(w)
		return err
	})
	return out, err
}
