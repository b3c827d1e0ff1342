// Package season has the screen of a season in pictures: what came in, how wet it was, when trucks
// came and how long they waited, what the house took for its work, and how far its meters were off.
// From a column to its tickets it is one key.
package season
