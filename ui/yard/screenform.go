package yard

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/shell"
)

// shownLoad is the current load as shown. Texts go into the form, which returns one value:
// everything drawn reads that value.
type shownLoad struct {
	yard *Yard
	now  Preview
}

func (s *shownLoad) read() { s.now = s.yard.Form().Preview() }

func (s *shownLoad) Fields() []model.Field { return s.now.Fields }

func (s *shownLoad) Type(id, text string) {
	if id == "grower" && (scans{s.yard}).openSample(text) {
		return
	}
	s.yard.Form().Type(id, text)
	s.read()
}

func (s *shownLoad) Enter(string) string { return "" } // loadView.commit answers it

func (s *shownLoad) Restore(id string) bool {
	changed := s.yard.Form().Restore(id)
	s.read()
	return changed
}

// loadView is the form of the current load. The same rows serve every load; only
// the texts change.
type loadView struct {
	*shell.FieldForm
	*shownLoad
	window *shell.Window
	warned bool   // the status line repeats a field's error
	asked  string // the field whose figure opened a box
}

func newLoadView(w *shell.Window, yard *Yard, changed func(), arrived func(string)) *loadView {
	shown := &shownLoad{yard: yard}
	shown.read()
	v := &loadView{window: w, shownLoad: shown, FieldForm: shell.NewFieldForm(w, shown, changed)}
	v.FormHooks = shell.FormHooks{
		Columns: inColumns, Arrived: arrived, Commit: v.commit, Leave: v.left, Wrong: v.sayWrong,
		Search: func(id, text string) { v.form().Search(id, text) },
		Home:   func() string { return v.form().FirstToDo() },
	}
	return v
}

func (v *loadView) form() *LoadForm { return v.yard.Form() }

// Show updates the form to the current load; see [shell.FieldForm.Show].
func (v *loadView) Show(all bool) {
	v.read()
	v.FieldForm.Show(all)
}

// showAll updates every entry and moves the focus to the next work.
func (v *loadView) showAll() {
	v.Show(true)
	v.focus()
}

// focus moves the focus to the next work.
func (v *loadView) focus() { v.Focus(v.form().FirstToDo()) }

// rowsAtLeft is the number of rows of the left column while the sample has room for the remark
// below it.
const rowsAtLeft = 8

// inColumns sets the sample at the right and everything else at the left. The columns keep their
// order for every grain, so that fields stay where users expect them; only the remark goes where
// there is room.
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

// sayWrong repeats a field's error on the status line, as a warning: the load can be put aside so.
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

// commit handles Enter: valid texts are recorded and the focus moves on, past what the form has
// filled in itself. It stays where the typed text is invalid.
func (v *loadView) commit(id string) (next string) {
	if row := v.Rows[id]; row.Field.State == model.Stop && v.form().IsTyped(id) {
		v.SayWrong(id)
		v.Select(id) // the next key replaces the text
		return id
	}
	v.write()
	if v.window.UI.FrontDialog() != nil { // a question came of it
		v.asked = id
		return id
	}
	next = v.form().Following(id)
	if next == "" {
		v.sayFilled()
		return id
	}
	return next
}

// goOn moves the focus past the field whose figure opened a box, once it is answered and the
// figure is recorded.
func (v *loadView) goOn() {
	id := v.asked
	if id == "" || v.window.UI.FrontDialog() != nil {
		return
	}
	v.asked = ""
	if v.form().Text(id) != "" && !v.form().IsTyped(id) {
		v.FocusOrder.Next(id)
	}
}

// sayFilled shows what is left to do after the last field. Enter stays there: on the button that
// issues the ticket it would issue it.
func (v *loadView) sayFilled() {
	if now := v.form().Now; now.CanIssue() {
		v.window.Say(model.OK, v.yard.session.Say("All is filled in. F12 issues the ticket."))
	} else {
		v.window.Say(model.Wait, now.WhyNotIssue())
	}
}

// left records valid texts, and keeps letters without a match.
func (v *loadView) left(id, text string, unfound bool) {
	if unfound && text != v.form().Text(id) {
		v.Typed(id, text)
	}
	v.write()
}

// write records the valid texts. By then the focus is elsewhere, and the slip follows it.
func (v *loadView) write() {
	if err := v.form().Commit(); err != nil {
		v.window.Session.Fail(err)
	}
	v.window.Runner.Later(func() { v.Show(false) })
}

// fieldPane is the fields over the moisture ruler.
type fieldPane struct {
	Scroll *container.Scroll
	ruler  *charts.MoistureRuler
	all    *fyne.Container
}

func newFieldPane(sheet *shell.FieldSheet) *fieldPane {
	p := &fieldPane{Scroll: container.NewVScroll(container.New(shell.Slim(), sheet.Content)), ruler: charts.NewMoistureRuler()}
	p.all = container.New(shell.FormSheet{Fields: sheet, Ruler: p.ruler}, p.Scroll, container.NewStack(p.ruler))
	return p
}

// show updates the ruler, and hides it when it has no marks.
func (p *fieldPane) show(r model.Ruler) {
	if bare := len(r.Marks) == 0; bare == p.ruler.Visible() {
		shell.SetVisible(p.ruler, !bare)
		p.all.Refresh()
	}
	p.ruler.Set(r.Marks, r.Bands...)
}

// scrollTo scrolls the fields no further than needed to have a row in sight.
func (p *fieldPane) scrollTo(row *shell.FormRow) {
	top, high, below := row.Position().Y, row.Size().Height, float32(0)
	if top+high > p.Scroll.Offset.Y+p.Scroll.Size().Height {
		below = 2 * shell.SlimGap
	}
	paint.ScrollTo(p.Scroll, top, top+high+below)
}
