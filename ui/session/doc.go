// Package session is what the areas of the window share: the use cases of the house,
// who is signed in, the lists of growers, trucks and bins, what is typed and not
// yet written down, and what is said, asked and printed. It knows no window.
//
// A presenter lives in the package of its area. It is made from a [Session], holds
// the state of one screen as plain values and ready strings, and works nothing out:
// every amount comes from the use cases or from a settlement. What it wants of the
// window it asks through the session: say this on the status line, put this
// question ([model.Ask], so that a test answers it like a person), do this in the
// background, show yourself again.
package session
