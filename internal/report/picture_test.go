package report

import (
	"slices"
	"testing"

	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paper"
)

func examplePicture() Picture {
	return Picture{
		Title: message.Name("Intake"), Wide: true, Base: 200,
		Stacks: []Stack{
			{Label: message.Name("a"), Value: message.Name("7"), Parts: []Part{{500, look.Of("corn")}, {250, look.Of("soybeans")}}},
			{Label: message.Name("b"), Value: message.Name("-2"), Parts: []Part{{-200, look.Of("oats")}}, Stroke: 400, HasStroke: true},
		},
		Guides: []Guide{{At: 500, Label: message.Name("50")}},
		Edge:   Edge{At: 500, Label: message.Name("trigger")},
		Stroke: message.Name("usual"),
	}
}

// marksOf is the picture alone on a page.
func marksOf(p Picture) paper.Marks {
	return Document{Blocks: []Block{p}}.Layout(Page{}).Pages[0]
}

func boxesOf(m paper.Marks, ink paper.Ink) []paper.Box {
	return slices.DeleteFunc(slices.Clone(m.Boxes), func(b paper.Box) bool { return b.Fill != ink })
}

func TestPictureIsDrawnToScale(t *testing.T) {
	m := marksOf(examplePicture())
	corn := boxesOf(m, inkOf(look.Of("corn").Light))
	soybeans := boxesOf(m, inkOf(look.Of("soybeans").Light.Toward(white, look.Washed)))
	oats := boxesOf(m, inkOf(look.Of("oats").Light.Toward(white, look.Washed)))
	if len(corn) != 1 || len(soybeans) != 1 || len(oats) != 1 {
		t.Fatalf("%d, %d and %d boxes", len(corn), len(soybeans), len(oats))
	}
	if corn[0].Height != pictureTall/2 || soybeans[0].Height != pictureTall/4 || oats[0].Height != pictureTall/5 {
		t.Errorf("heights %d %d %d of %d", corn[0].Height, soybeans[0].Height, oats[0].Height, pictureTall)
	}
	if soybeans[0].At.Y+soybeans[0].Height != corn[0].At.Y {
		t.Error("soybeans do not lie on the corn")
	}
	if ground := corn[0].At.Y + corn[0].Height; oats[0].At.Y != ground {
		t.Errorf("below zero begins at %d, the ground is %d", oats[0].At.Y, ground)
	}
	if edge := boxesOf(m, edgeInk); len(edge) != 1 || edge[0].At.X <= corn[0].At.X+corn[0].Width || edge[0].At.X > oats[0].At.X {
		t.Errorf("what lies right of the edge: %v", edge)
	}
}

// A printer without colours still tells grains apart: each but the first has lines of its own.
func TestPictureIsHatched(t *testing.T) {
	m := marksOf(examplePicture())
	soybeans := boxesOf(m, inkOf(look.Of("soybeans").Light.Toward(white, look.Washed)))[0]
	lines := 0
	for _, r := range m.Rules {
		if r.Ink == inkOf(look.Of("soybeans").Light) {
			lines++
			if r.From.X < soybeans.At.X || r.To.X > soybeans.At.X+soybeans.Width || r.From.Y < soybeans.At.Y || r.To.Y > soybeans.At.Y+soybeans.Height {
				t.Errorf("a line of the hatching leaves its box: %v of %v", r, soybeans)
			}
		}
	}
	if lines < 8 {
		t.Errorf("%d lines", lines)
	}
}

// Two pictures that are not wide stand side by side; one left over keeps its width.
func TestPicturesBesideEachOther(t *testing.T) {
	p := examplePicture()
	p.Wide = false
	m := Document{Blocks: []Block{p, p, p}}.Layout(Page{}).Pages[0]
	corn := boxesOf(m, inkOf(look.Of("corn").Light))
	if corn[0].At.Y != corn[1].At.Y || corn[2].At.Y <= corn[0].At.Y || corn[0].Width != corn[2].Width || corn[0].At.X != corn[2].At.X {
		t.Errorf("three pictures: %v", corn)
	}
}

// A terminal has no picture, and a picture without columns says why.
func TestPictureElsewhere(t *testing.T) {
	if text := (Document{Blocks: []Block{examplePicture()}}).Text(80); text != "" && len(text) > 4 {
		t.Errorf("as text: %q", text)
	}
	m := marksOf(Picture{Title: message.Name("Intake"), Empty: message.Name("Nothing came in.")})
	if !slices.ContainsFunc(m.Runs, func(r paper.Run) bool { return r.Text == "Nothing came in." }) {
		t.Error("an empty picture says nothing")
	}
}
