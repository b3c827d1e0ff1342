package yard

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
)

// loadView is the form of the load in hand. The same rows serve every load:
// what a truck's form holds is the presenter's, and only the texts change.
type loadView struct {
	*shell.FieldForm
	window *shell.Window
	yard   *Yard
	warned bool // the status line repeats what is wrong with a field
}

// inHand is the load in hand as the source of the form: another one at every truck.
type inHand struct{ yard *Yard }

func (h inHand) Fields() []model.Field  { return h.yard.Form().Fields() }
func (h inHand) Type(id, text string)   { h.yard.Form().Type(id, text) }
func (h inHand) Enter(string) string    { return "" } // loadView.commit answers it
func (h inHand) Restore(id string) bool { return h.yard.Form().Restore(id) }

func newLoadView(w *shell.Window, yard *Yard, changed func(), arrived func(string)) *loadView {
	v := &loadView{window: w, yard: yard, FieldForm: shell.NewFieldForm(w, inHand{yard}, changed)}
	v.FormHooks = shell.FormHooks{
		Columns: inColumns, Arrived: arrived, Commit: v.commit, Leave: v.left, Wrong: v.sayWrong,
		Search: func(id, text string) { v.form().Search(id, text) },
		Home:   func() string { return v.form().FirstToDo() },
	}
	return v
}

func (v *loadView) form() *LoadForm { return v.yard.Form() }

// rowsAtLeft is how many rows the left column has while the sample has room for
// the remark beneath it.
const rowsAtLeft = 8

// inColumns sets the sample at the right and everything else at the left. The
// columns keep their order whatever the grain, so that the hand finds a field
// where it was; only the remark goes where there is room.
func inColumns(fields []model.Field, rows map[string]*shell.FormRow) (left, right []fyne.CanvasObject) {
	for _, part := range []model.Part{model.WhoPart, model.WeightPart, model.ClosePart, model.SamplePart} {
		for _, f := range fields {
			switch {
			case f.Part != part || f.ID == "remark":
			case part == model.SamplePart:
				right = append(right, rows[f.ID])
			default:
				left = append(left, rows[f.ID])
			}
		}
	}
	remark := rows["remark"]
	remark.Mute = true
	if len(right) < rowsAtLeft {
		return left, append(right, remark)
	}
	return append(left, remark), right
}

// sayWrong repeats on the status line what is wrong with a field, as a warning:
// the load can be put aside so.
func (v *loadView) sayWrong(row *shell.FormRow) {
	switch {
	case row.IsWrong():
		v.window.Say(model.Warn, row.Field.Note)
		v.warned = true
	case v.warned:
		v.window.Say(model.Plain, "")
		v.warned = false
	}
}

// commit is Enter: what can stand goes into the book and the keyboard moves on.
// It stays where what was typed cannot stand.
func (v *loadView) commit(id string) (next string) {
	if row := v.Rows[id]; row.Field.State == model.Stop && v.form().IsTyped(id) {
		v.SayWrong(id)
		return id
	}
	v.write()
	if v.window.Stage.FrontDialog() != nil { // a question came of it
		return id
	}
	if v.form().After(id) == "" {
		v.sayFilled()
		return id
	}
	return ""
}

// sayFilled says what is left to do after the last field. Enter stays there: on
// the button that issues the ticket it would issue it.
func (v *loadView) sayFilled() {
	if v.form().CanIssue() {
		v.window.Say(model.OK, session.Say("All is filled in. F12 issues the ticket."))
		return
	}
	v.window.Say(model.Wait, v.form().WhyNotIssue())
}

// left writes down what can stand, and keeps letters for which nothing was found.
func (v *loadView) left(id, text string, unfound bool) {
	if unfound && text != v.form().Text(id) {
		v.Typed(id, text)
	}
	v.write()
}

// write writes down what can stand. By then the keyboard is elsewhere, and the
// slip follows it.
func (v *loadView) write() {
	if err := v.form().Commit(); err != nil {
		v.window.Session.Fail(err)
	}
	v.window.Runner.Later(func() { v.Show(false) })
}

// focus puts the keyboard where work goes on.
func (v *loadView) focus() { v.Focus(v.form().FirstToDo()) }
