package lab

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// benchWorth prints the value of a tenth of a point.
type benchWorth struct {
	terminal.BookFlags
	Load string `arg:"" help:"A load, or the number of its ticket." placeholder:"LOAD"`
	Step string `help:"How many points." default:"0.1" placeholder:"POINTS"`
	JSON bool   `help:"Print for programs: every figure as text."`
}

func (benchWorth) Help() string {
	return `The load is settled as it was tested, and settled again that much drier and that much wetter, and over what the meter may be off. Nothing is estimated: a step across a trigger shows all of the jump.

    tenth bench worth L12
    tenth bench worth 1042 --step 0.5`
}

// rulerColumns is the width of a ruler.
const rulerColumns = 71

func (c benchWorth) Run(t *terminal.Terminal) error {
	step, err := pointsIn("Step", c.Step)
	if err != nil {
		return err
	}
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		l, err := p.LoadNamed(c.Load)
		if err != nil {
			return err
		}
		w, err := office.WorthOf(p, p.Desk, l, step)
		if err != nil {
			return err
		}
		if c.JSON {
			return p.PrintJSON(worthJSON(w))
		}
		here := w.Here
		p.Say("At %s: %s settled, %s%s.", here.Moisture.Printed(), here.Settled.Printed(), here.Quantity.Printed(), payableWords(here))
		tellWorth(p, step, w.Worth)
		if w.Tolerance != nil {
			p.Say("The meter may be off by %s to either side:", w.Tolerance.Step)
			tellWorth(p, w.Tolerance.Step, *w.Tolerance)
		} else {
			p.Say("How far the meter may be off is not entered; see \"tenth bench meter\".")
		}
		p.Say("")
		fmt.Fprint(p.Stdout, drawRuler(w.Ruler, rulerColumns, p.Printer))
		return nil
	})
}

func payableWords(s *settle.Settlement) string {
	if s.Price == nil {
		return ", money " + signed(s.ToOwner()) + ", no price"
	}
	return ", payable " + s.Payable.Printed()
}

func tellWorth(p *terminal.Session, step quantity.Amount, w settle.Worth) {
	for _, one := range []struct {
		way message.Text
		end settle.End
	}{{message.New("drier"), w.Drier}, {message.New("wetter"), w.Wetter}} {
		if one.end.Settlement == nil {
			p.Say("  %s %s, at %s: it would not be settled. %s", step, one.way, one.end.Moisture.FixedString(1), one.end.Problems)
			continue
		}
		c := one.end.Change
		text := message.New("  %s %s, at %s: %s, %s, money %s", step, one.way, one.end.Moisture.FixedString(1), signed(c.Weight), signedTo(c.Quantity, w.Here.Quantity.Rounding().Places()), signed(c.ToOwner))
		if c.Payable != nil {
			text = message.New("%s, payable %s", text, signed(*c.Payable))
		}
		p.Say("%s", text)
	}
}

// signed is a change with its way, "+33 lb".
func signed(a quantity.Amount) string {
	if a.Sign() > 0 {
		return "+" + a.String()
	}
	return a.String()
}

// signedTo is a change with so many decimals, as the figure it changes has.
func signedTo(a quantity.Amount, places int32) string {
	if a.Sign() > 0 {
		return "+" + a.FixedString(places)
	}
	return a.FixedString(places)
}

func worthJSON(w office.Worth) map[string]any {
	out := map[string]any{"moisture": w.Here.Moisture.Printed(), "step": w.Step.String(), "tenth": endsJSON(w.Worth), "ruler": rulerJSON(w)}
	if w.Tolerance != nil {
		out["tolerance"] = w.Tolerance.Step.String()
		out["over_tolerance"] = endsJSON(*w.Tolerance)
	}
	return out
}

func endsJSON(w settle.Worth) map[string]any {
	return map[string]any{"drier": endJSON(w.Drier), "wetter": endJSON(w.Wetter)}
}

func endJSON(e settle.End) map[string]string {
	out := map[string]string{"moisture": e.Moisture.String()}
	if e.Settlement == nil {
		out["not_settled"] = e.Problems.Error()
		return out
	}
	out["weight"], out["quantity"], out["to_owner"] = e.Change.Weight.String(), e.Change.Quantity.String(), e.Change.ToOwner.String()
	if e.Change.Payable != nil {
		out["payable"] = e.Change.Payable.String()
	}
	return out
}

// rulerJSON is the ruler without its strokes: its marks and ranges.
func rulerJSON(w office.Worth) map[string]any {
	marks := []map[string]string{}
	for _, m := range w.Ruler.Marks {
		if !m.Label.IsZero() {
			marks = append(marks, map[string]string{"kind": string(m.Kind), "label": m.Label.String(), "at": fmt.Sprint(w.Ruler.MarkPlace(m))})
		}
	}
	out := map[string]any{"low": w.Ruler.Low.String(), "high": w.Ruler.High.String(), "marks": marks}
	if b := w.Ruler.Band; b != nil {
		out["band"] = map[string]string{"from": fmt.Sprint(w.Ruler.Place(b.From)), "to": fmt.Sprint(w.Ruler.Place(b.To))}
	}
	return out
}
