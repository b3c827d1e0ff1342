// Package model is the vocabulary of the window: what presenters provide and widgets show. A state,
// a row, a field, an option, a question, a job, a mark on the ruler each exist once, here, so that
// nothing is copied from one package's type to another's.
//
// It is plain data without a window: ready strings, and places in thousandths of the width they are
// drawn in. The lines of a slip on the screen belong to the slip.
package model
