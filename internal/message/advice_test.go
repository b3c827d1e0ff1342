package message

import (
	"errors"
	"testing"
)

// What to do is parted from what is wrong by the format, in English and in a language, also where
// another error that the text wraps has it. What people typed is never advice.
func TestAdvice(t *testing.T) {
	french, err := ReadCatalog([]byte(`{"language": "fr", "name": "Français", "check": "nobody", "figures": {}, "texts": {
		"ticket %d is void (%v); reissue it": "le bon %d est annulé (%v) ; réémettez-le",
		"load %s: %w": "chargement %s : %w",
		"The weight is %s. Weigh again": "Le poids est de %s. Pesez de nouveau",
		"%s; %s": "%s; %s", "ticket %d is issued": "le bon %d est émis", "go on with ticket %d": "continuez avec le bon %d",
		"the disk is full. Nothing was entered": "le disque est plein. Rien n'a été inscrit"
	}}`))
	if err != nil {
		t.Fatal(err)
	}
	void := WrongPhase.Errorf("ticket %d is void (%v); reissue it", 7, "torn. Print it again; now")
	for _, c := range []struct {
		err                error
		what, todo         string
		frenchWhat, faites string
	}{
		{void, "ticket 7 is void (torn. Print it again; now)", "reissue it", "le bon 7 est annulé (torn. Print it again; now)", "réémettez-le"},
		{Errorf("load %s: %w", Own("L3"), void), "load L3: ticket 7 is void (torn. Print it again; now)", "reissue it", "chargement L3 : le bon 7 est annulé (torn. Print it again; now)", "réémettez-le"},
		{Errorf("The weight is %s. Weigh again", Own("0 lb")), "The weight is 0 lb", "Weigh again", "Le poids est de 0 lb", "Pesez de nouveau"},
		{Errorf("%s; %s", New("ticket %d is issued", 7), New("go on with ticket %d", 8)), "ticket 7 is issued", "go on with ticket 8", "le bon 7 est émis", "continuez avec le bon 8"},
		{Errorf("the disk is full. Nothing was entered"), "the disk is full. Nothing was entered", "", "le disque est plein. Rien n'a été inscrit", ""},
		{Errorf("ticket %d is issued", 7), "ticket 7 is issued", "", "le bon 7 est émis", ""},
		{errors.New("open x; try again"), "open x; try again", "", "open x; try again", ""},
	} {
		what, todo := Of(c.err).Advice()
		p := NewPrinter(french)
		if what.String() != c.what || todo.String() != c.todo || p.Text(what) != c.frenchWhat || p.Text(todo) != c.faites {
			t.Errorf("%v: %q, %q; in French %q, %q", c.err, what, todo, p.Text(what), p.Text(todo))
		}
	}
}
