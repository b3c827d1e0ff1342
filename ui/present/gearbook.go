package present

import (
	"context"
	"path/filepath"
	"strings"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/slip"
	"tenthpoint/ui/model"
)

// Under these names the station remembers.
const (
	papersWay    = "papers.way"
	papersQueue  = "papers.queue"
	backupFolder = "backup.folder"
	backupLast   = "backup.last" // when and where, a line each
	verifyLast   = "verify.last" // when, what was looked at, and problems, a line each
)

// Card is where papers go and how the book is kept.
func (g *Gear) Card() []slip.PaperLine {
	c := &card{frame: g.frame}
	c.part(Say("PAPERS"))
	c.noted(slip.PaperPair, Say("Tickets go to"), g.wayWords(), g.wayNote())
	c.part(Say("THE BOOK"))
	c.noted(slip.PaperPair, Say("File"), "", g.frame.Desk.Book().Path())
	g.backupLines(c)
	g.verifyLines(c)
	return c.lines
}

func (g *Gear) way() string {
	if g.frame.Station == nil {
		return ToFolder
	}
	return orElse(g.frame.Station.Recall(papersWay), ToFolder)
}

func (g *Gear) wayWords() string {
	switch g.way() {
	case ToScreen:
		return Say("a folder, then the screen")
	case ToQueue:
		return join(" ", Say("the print queue"), g.frame.Station.Recall(papersQueue))
	}
	return Say("a folder")
}

func (g *Gear) wayNote() string {
	if g.way() == ToQueue {
		return Say("A queue that has taken a paper may still be out of paper: look at the printer.")
	}
	return Say("the folder “papers” beside the book")
}

// AskPapers asks where papers are to go.
func (g *Gear) AskPapers() {
	if g.frame.Station == nil {
		g.frame.Say(model.Stop, Say("this desk cannot change where papers go."))
		return
	}
	g.frame.Put(model.Ask{
		Title: Say("Where do papers go?"),
		Text:  Say("It holds for this computer. A folder needs no printer and keeps every paper."),
		Fields: []model.AskField{
			{ID: "way", Label: Say("Way"), Value: g.way(), Chars: 28, Required: true, Options: []model.Option{
				{Code: ToFolder, Name: Say("a folder beside the book")},
				{Code: ToScreen, Name: Say("a folder, then the screen")},
				{Code: ToQueue, Name: Say("a print queue of this computer")},
			}},
			{ID: "queue", Label: Say("Queue"), Value: g.frame.Station.Recall(papersQueue), Chars: 24, Hint: Say("its name; empty: the computer's own choice")},
		},
		Yes: Say("Send them there"),
		Then: func(values map[string]string) {
			queue := strings.TrimSpace(values["queue"])
			if err := g.frame.Station.SendPapers(values["way"], queue); err != nil {
				g.frame.Fail(err)
				return
			}
			g.frame.Station.Remember(papersWay, values["way"])
			g.frame.Station.Remember(papersQueue, queue)
			g.frame.Say(model.OK, Say("papers go to %s.", g.wayWords()))
			g.frame.window.Redraw()
		},
	})
}

func (g *Gear) backupLines(c *card) {
	last := g.frame.recall(backupLast)
	when, where, _ := strings.Cut(last, "\n")
	switch {
	case last == "":
		c.add(slip.PaperMark, Say("No backup has been made from this computer. Ctrl+K makes one."), "")
	case !strings.HasPrefix(when, g.frame.Desk.Today().String()):
		c.noted(slip.PaperMark, Say("Last backup"), when, where)
	default:
		c.noted(slip.PaperPair, Say("Last backup"), when, where)
	}
}

// AskBackup asks where to, and backs the book up.
func (g *Gear) AskBackup() {
	folder := orElse(g.frame.recall(backupFolder), filepath.Join(filepath.Dir(g.frame.Desk.Book().Path()), "backups"))
	g.frame.Put(model.Ask{
		Title:  Say("Back the book up"),
		Text:   Say("The copy is made while the book is in use and then checked. Keep one copy out of the building."),
		Fields: []model.AskField{{ID: "folder", Label: Say("Folder"), Value: folder, Chars: 44, Required: true}},
		Yes:    Say("Back up now"),
		Then:   func(values map[string]string) { g.backUp(strings.TrimSpace(values["folder"])) },
	})
}

// backUp copies the book into a folder, under its own name and the minute.
func (g *Gear) backUp(folder string) {
	now := g.frame.Clock()
	book := g.frame.Desk.Book()
	base := strings.TrimSuffix(filepath.Base(book.Path()), filepath.Ext(book.Path()))
	target := filepath.Join(folder, base+"-"+strings.NewReplacer(" ", "-", ":", "").Replace(now)+".book")
	g.frame.Run(model.Job{
		Topic: "backup", Title: Say("Copying the book and checking the copy"),
		Do: func(ctx context.Context, _ func(int, int)) error {
			if g.frame.Station != nil {
				if err := g.frame.Station.MakeFolder(folder); err != nil {
					return err
				}
			}
			return book.Backup(ctx, target)
		},
		Done: func(err error) {
			if err != nil {
				g.frame.Say(model.Stop, Say("the book was not backed up: %s", sentence(err)))
				return
			}
			g.frame.remember(backupFolder, folder)
			g.frame.remember(backupLast, now+"\n"+target)
			g.frame.Say(model.OK, Say("the book is backed up and the copy is sound: %s", target))
		},
	})
}

func (g *Gear) verifyLines(c *card) {
	last := strings.Split(g.frame.recall(verifyLast), "\n")
	if len(last) < 2 {
		c.add(slip.PaperMark, Say("The book has not been checked from this computer. Ctrl+J checks it."), "")
		return
	}
	when, looked, problems := last[0], last[1], last[2:]
	if len(problems) == 0 {
		c.noted(slip.PaperPair, Say("Last check"), Say("%s, sound", when), looked)
		return
	}
	c.noted(slip.PaperMark, Say("Last check"), Say("%s, not sound", when), looked)
	for _, p := range problems {
		c.add(slip.PaperMark, p, "")
	}
	c.add(slip.PaperText, Say("Stop and copy the file as it is. Do not mend it. F1 tells what to do."), "")
}

// Verify checks the whole book away from the window. It can be stopped, and
// trucks can be received meanwhile.
func (g *Gear) Verify() {
	var found desk.Soundness
	g.frame.Run(model.Job{
		Topic: "verify", Title: Say("Checking the book"),
		Do: func(ctx context.Context, report func(done, total int)) error {
			_, tickets, err := g.frame.Desk.Search(ctx, desk.Search{Limit: 1})
			if err != nil {
				return err
			}
			found, err = g.frame.Desk.Verify(ctx, func(done int64) { report(int(done), int(max(done, tickets))) })
			return err
		},
		Done: func(err error) {
			if err != nil {
				g.frame.Say(model.Warn, Say("the check was stopped or could not go on: %s", sentence(err)))
				return
			}
			g.checked(found)
		},
	})
}

// checked remembers what a check found and says it.
func (g *Gear) checked(found desk.Soundness) {
	looked := Say("%s facts, %s loads, %s settlements worked again, %s editions", counted(found.Facts), counted(found.Loads), counted(found.Settlements), counted(found.Editions))
	g.frame.remember(verifyLast, strings.Join(append([]string{g.frame.Clock(), looked}, found.Problems...), "\n"))
	if n := len(found.Problems); n > 0 {
		g.frame.Say(model.Stop, Say("the book is not sound: %d problems. The first: %s", n, found.Problems[0]))
		return
	}
	g.frame.Say(model.OK, Say("the book is sound: %s.", looked))
}
