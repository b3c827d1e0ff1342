// Package bins is the grain in the house: the bins drawn to scale, a list of them with what needs
// looking at first, the card of the chosen one, and the movements of grain between them.
package bins
