// Package session has what the areas of the window share: the use cases, the person signed in, the
// lists of growers, trucks and bins, drafts, and messages, dialogs and printing. It depends on no
// window.
//
// A presenter lives in the package of its area. It is made from a [Session], holds the state of one
// screen as plain values and ready strings, and calculates nothing: every amount comes from the use
// cases or from a settlement. It uses the window through the session: show a status message, open a
// dialog ([model.Ask], so that a test answers it like a person), run something in the background,
// refresh.
//
// What a presenter says, it says in the language of its session ([Session.Say]). A function without
// a session takes the [Language].
package session
