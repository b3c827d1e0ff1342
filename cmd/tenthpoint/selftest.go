package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/yard"
)

// selfTest does one truck's work on an invented elevator by itself, in the window that people would
// use: it shows that an installed program opens, weighs, prints and verifies on this computer.
type selfTest struct {
	program *program
	folder  string
	yard    *yard.Yard
	number  int64
}

// selfTestPatience is the timeout of each step that waits for something.
const selfTestPatience = 30 * time.Second

// steps are what is tried, in order.
var selfTestSteps = []struct {
	said string
	does func(*selfTest) error
}{
	{"a book opens in a window", (*selfTest).open},
	{"a simulated scale is read", (*selfTest).link},
	{"a truck is weighed in", (*selfTest).weighIn},
	{"it is tested and weighed out", (*selfTest).weighOut},
	{"its ticket is issued and printed", (*selfTest).issue},
	{"the book is sound", (*selfTest).verify},
}

// runSelfTest does every step while the window runs, then ends the program.
func (p *program) runSelfTest() error {
	folder, err := os.MkdirTemp("", "tenthpoint-selftest-")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(folder) }()
	s := &selfTest{program: p, folder: folder}
	var failed error
	p.app.Lifecycle().SetOnStarted(func() {
		go func() {
			failed = s.run()
			fyne.Do(p.app.Quit)
		}()
	})
	p.app.Run()
	return failed
}

// run stops at the first step that fails and names it.
func (s *selfTest) run() error {
	for _, step := range selfTestSteps {
		if err := step.does(s); err != nil {
			return fmt.Errorf("%s: %w", step.said, err)
		}
		fmt.Println("ok    " + step.said)
	}
	return nil
}

// onScreen does something as a key would: in the window's own turn.
func (s *selfTest) onScreen(do func() error) (err error) {
	fyne.DoAndWait(func() { err = do() })
	return err
}

func (s *selfTest) book() string { return filepath.Join(s.folder, "selftest.book") }

func (s *selfTest) open() error {
	if err := fillDemo(context.Background(), s.book(), time.Now(), func(int) {}); err != nil {
		return err
	}
	return s.onScreen(func() error {
		if err := s.program.openDemo(s.book()); err != nil {
			return err
		}
		s.yard = yard.NewYard(s.program.frame)
		return nil
	})
}

func (s *selfTest) link() error {
	frame := s.program.frame
	scale, there := frame.Scale()
	if !there {
		return errors.New("the demo has no scale")
	}
	scale.Link = elevator.SimulatedLink
	indicator, err := s.program.link(context.Background(), scale, s.book())
	if err != nil {
		return err
	}
	return s.onScreen(func() error {
		frame.Indicator, frame.Deck = indicator, s.program.deck
		return nil
	})
}

func (s *selfTest) weighIn() error {
	s.typed("grower", "123", "commodity", "corn", "truck", "77")
	return s.weigh(load.Gross, "52300")
}

func (s *selfTest) weighOut() error {
	s.typed("moisture", "17.2", "test-weight", "56", "bin", "P1", "terms", "sold", "price", "4.15")
	return s.weigh(load.Tare, "24120")
}

// typed sets the texts of fields, each after its id, as keys do.
func (s *selfTest) typed(fields ...string) {
	fyne.DoAndWait(func() {
		for pair := range slices.Chunk(fields, 2) {
			s.yard.Form().Type(pair[0], pair[1])
		}
	})
}

// weigh rolls a truck on to the simulated deck and takes its weight, as F10 does.
func (s *selfTest) weigh(which load.Which, pounds string) error {
	weight := quantity.Of(pounds, quantity.Lb)
	if err := s.rollOn(weight); err != nil {
		return err
	}
	fyne.DoAndWait(func() { s.yard.Scale.Weigh(s.yard.Form(), string(which)) })
	return s.wait("the weight", func() bool {
		at := s.yard.Form().Book
		if at == nil {
			return false
		}
		taken, weighed := at.Weight(which, "")
		return weighed && taken.Weight.Equal(weight)
	})
}

// rollOn drives the truck before off the deck and another on; a deck takes a moment to be empty.
func (s *selfTest) rollOn(weight quantity.Amount) error {
	deck := s.program.deck
	deck.RollOff()
	return s.wait("an empty deck", func() bool { return deck.RollOn(weight) == nil })
}

func (s *selfTest) issue() error {
	err := s.onScreen(func() (err error) {
		s.number, err = s.yard.Form().Issue()
		return err
	})
	if err != nil {
		return err
	}
	slip := filepath.Join(s.folder, "papers", fmt.Sprintf("ticket-%d.pdf", s.number))
	return s.wait(slip, func() bool {
		paper, err := os.ReadFile(slip)
		return err == nil && bytes.HasPrefix(paper, []byte("%PDF-"))
	})
}

func (s *selfTest) verify() error {
	desk := s.program.frame.Desk
	sound, err := audit.Verify(context.Background(), desk, desk.Book(), nil)
	if err != nil {
		return err
	}
	if len(sound.Problems) > 0 {
		return message.Invalid.Errorf("%s", message.Texts("; ", sound.Problems))
	}
	return nil
}

// wait asks in the window's turn until something is there.
func (s *selfTest) wait(what string, there func() bool) error {
	for end := time.Now().Add(selfTestPatience); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		var is bool
		fyne.DoAndWait(func() { is = there() })
		if is {
			return nil
		}
	}
	return fmt.Errorf("%s did not come in %s", what, selfTestPatience)
}
