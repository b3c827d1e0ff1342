package equipment

import (
	"context"
	"path/filepath"
	"strconv"
	"strings"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/book/place"
	"tenthpoint/internal/keyring"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Under these names the station remembers.
const (
	papersWay    = "papers.way"
	papersQueue  = "papers.queue"
	backupFolder = "backup.folder"
	backupLast   = "backup.last" // when and where, a line each
	verifyLast   = "verify.last" // when, what was looked at, and problems, a line each
)

// Card shows the printer and the state of the book's file.
func (g *Equipment) Card() []model.CardLine {
	c := &session.Card{Session: g.session}
	c.Part(g.session.Say("PAPERS"))
	c.Noted(model.CardPair, g.session.Say("Tickets go to"), g.wayWords(), g.wayNote())
	g.Logs.lines(c)
	c.Part(g.session.Say("THE BOOK"))
	c.Noted(model.CardPair, g.session.Say("File"), "", g.session.Desk.Book().Path())
	g.backupLines(c)
	g.verifyLines(c)
	keyLines(g, c)
	return c.Lines
}

// keyLines say whether this computer signs; nothing in a house without keys.
func keyLines(g *Equipment, c *session.Card) {
	keys, err := keyring.Read(context.Background(), g.session.Desk.Reader())
	if err != nil || keys.IsEmpty() {
		return
	}
	own := scalehouse.KeyOf(g.session.Desk)
	if own.IsZero() || !keys.Counts(own.Public()) {
		c.Add(model.CardMark, g.session.Say("Unsigned: no certified key was at hand."), "")
		return
	}
	one, _ := keys.Find(own.Public())
	c.Noted(model.CardPair, g.session.Say("Signs as"), one.Computer, own.Public().Fingerprint())
}

func (g *Equipment) way() string {
	if g.session.Station == nil {
		return session.ToFolder
	}
	return session.OrElse(g.session.Station.Recall(papersWay), session.ToFolder)
}

func (g *Equipment) wayWords() string {
	switch g.way() {
	case session.ToScreen:
		return g.session.Say("a folder, then the screen")
	case session.ToQueue:
		return session.Join(" ", g.session.Say("the print queue"), g.session.Station.Recall(papersQueue))
	}
	return g.session.Say("a folder")
}

func (g *Equipment) wayNote() string {
	if g.way() == session.ToQueue {
		return g.session.Say("A queue that has taken a paper may still be out of paper: look at the printer.")
	}
	return g.session.Say("the folder “papers” beside the book")
}

// AskPapers asks where papers are to go.
func (g *Equipment) AskPapers() {
	if g.session.Station == nil {
		g.session.Notify(model.Stop, g.session.Say("this desk cannot change where papers go."))
		return
	}
	g.session.Put(model.Ask{
		Title: g.session.Say("Where do papers go?"),
		Text:  g.session.Say("It holds for this computer. A folder needs no printer and keeps every paper."),
		Fields: []model.AskField{
			{ID: "way", Label: g.session.Say("Way"), Value: g.way(), Chars: 28, Required: true, Options: []model.Option{
				{Code: session.ToFolder, Name: g.session.Say("a folder beside the book")},
				{Code: session.ToScreen, Name: g.session.Say("a folder, then the screen")},
				{Code: session.ToQueue, Name: g.session.Say("a print queue of this computer")},
			}},
			{ID: "queue", Label: g.session.Say("Queue"), Value: g.session.Station.Recall(papersQueue), Chars: 24, Hint: g.session.Say("its name; empty: the computer's own choice")},
			{ID: "slips", Label: g.session.Say("Slips on"), Value: g.slipsOn(), Chars: 28, Required: true, Options: slipPapers(g.session.Language)},
			{ID: "letters", Label: g.session.Say("Letters"), Value: session.OrElse(g.session.Station.Recall(session.SlipLetters), roll.DefaultPage), Chars: 8, Options: codePages(), Hint: g.session.Say("of the receipt printer")},
		},
		Yes: g.session.Say("Send them there"),
		Then: func(values map[string]string) {
			queue := strings.TrimSpace(values["queue"])
			if err := g.session.Station.SendPapers(values["way"], queue); err != nil {
				g.session.Fail(err)
				return
			}
			g.session.Station.Remember(papersWay, values["way"])
			g.session.Station.Remember(papersQueue, queue)
			g.session.Station.Remember(session.SlipColumns, strings.TrimPrefix(values["slips"], onPages))
			g.session.Station.Remember(session.SlipLetters, values["letters"])
			g.session.Notify(model.OK, g.session.Say("papers go to %s.", g.wayWords()))
			g.session.Window.Redraw()
		},
	})
}

// onPages is the choice of slips on pages rather than on a roll.
const onPages = "page"

// slipsOn is the paper that slips are printed on from this computer.
func (g *Equipment) slipsOn() string {
	if settings, isRoll := session.SlipRoll(g.session); isRoll {
		return strconv.Itoa(settings.Columns)
	}
	return onPages
}

// slipPapers are the papers for slips. The printer of a roll draws the QR
// code itself.
func slipPapers(in session.Language) []model.Option {
	return []model.Option{
		{Code: onPages, Name: in.Say("pages")},
		{Code: strconv.Itoa(roll.Narrow), Name: in.Say("a receipt roll of %d letters", roll.Narrow)},
		{Code: strconv.Itoa(roll.Wide), Name: in.Say("a receipt roll of %d letters", roll.Wide)},
	}
}

// codePages are the tables of letters that receipt printers have.
func codePages() []model.Option {
	var out []model.Option
	for _, page := range roll.Pages() {
		out = append(out, model.Option{Code: page, Name: page})
	}
	return out
}

func (g *Equipment) backupLines(c *session.Card) {
	last := g.session.Recall(backupLast)
	when, where, _ := strings.Cut(last, "\n")
	switch {
	case last == "":
		c.Add(model.CardMark, g.session.Say("No backup has been made from this computer. Ctrl+K makes one."), "")
	case !strings.HasPrefix(when, g.session.Desk.Today().String()):
		c.Noted(model.CardMark, g.session.Say("Last backup"), when, where)
	default:
		c.Noted(model.CardPair, g.session.Say("Last backup"), when, where)
	}
}

// AskBackup asks where to, and backs the book up.
func (g *Equipment) AskBackup() {
	folder := session.OrElse(g.session.Recall(backupFolder), filepath.Join(place.Beside(g.session.Desk.Book().Path()), "backups"))
	g.session.Put(model.Ask{
		Title:  g.session.Say("Back the book up"),
		Text:   g.session.Say("The copy is made while the book is in use and then checked. Keep one copy out of the building."),
		Fields: []model.AskField{{ID: "folder", Label: g.session.Say("Folder"), Value: folder, Chars: 44, Most: 1000, Required: true}},
		Yes:    g.session.Say("Back up now"),
		Then:   func(values map[string]string) { g.backUp(strings.TrimSpace(values["folder"])) },
	})
}

// backUp copies the book into a folder, under its own name and the minute.
func (g *Equipment) backUp(folder string) {
	now := g.session.Clock()
	book := g.session.Desk.Book()
	target := filepath.Join(folder, place.Name(book.Path())+"-"+strings.NewReplacer(" ", "-", ":", "").Replace(now)+".book")
	g.session.Run(model.Job{
		Topic: "backup", Title: g.session.Say("Copying the book and checking the copy"),
		Do: func(ctx context.Context, _ func(int, int)) error {
			if g.session.Station != nil {
				if err := g.session.Station.MakeFolder(folder); err != nil {
					return err
				}
			}
			return book.Backup(ctx, target, g.session.Desk.HeadText)
		},
		Done: func(err error) {
			if err != nil {
				g.session.Notify(model.Stop, g.session.Say("the book was not backed up: %s", g.session.Sentence(err)))
				return
			}
			g.session.Remember(backupFolder, folder)
			g.session.Remember(backupLast, now+"\n"+target)
			g.session.Notify(model.OK, g.session.Say("the book is backed up and the copy is sound: %s", target))
		},
	})
}

func (g *Equipment) verifyLines(c *session.Card) {
	last := strings.Split(g.session.Recall(verifyLast), "\n")
	if len(last) < 2 {
		c.Add(model.CardMark, g.session.Say("The book has not been checked from this computer. Ctrl+J checks it."), "")
		return
	}
	when, looked, problems := last[0], last[1], last[2:]
	if len(problems) == 0 {
		c.Noted(model.CardPair, g.session.Say("Last check"), g.session.Say("%s, sound", when), looked)
		return
	}
	c.Noted(model.CardMark, g.session.Say("Last check"), g.session.Say("%s, not sound", when), looked)
	for _, p := range problems {
		c.Add(model.CardMark, p, "")
	}
	c.Add(model.CardText, g.session.Say("Stop and copy the file as it is. Do not mend it. F1 tells what to do."), "")
}

// Verify checks the whole book away from the window. It can be stopped, and
// trucks can be received meanwhile.
func (g *Equipment) Verify() {
	var found audit.Soundness
	g.session.Run(model.Job{
		Topic: "verify", Title: g.session.Say("Checking the book"),
		Do: func(ctx context.Context, report func(done, total int)) error {
			_, tickets, err := office.FindTickets(ctx, g.session.Desk, office.Search{Limit: 1})
			if err != nil {
				return err
			}
			found, err = audit.Verify(ctx, g.session.Desk, g.session.Desk.Book(), func(done int64) { report(int(done), int(max(done, tickets))) })
			return err
		},
		Done: func(err error) {
			if err != nil {
				g.session.Notify(model.Warn, g.session.Say("the check was stopped or could not go on: %s", g.session.Sentence(err)))
				return
			}
			g.checked(found)
		},
	})
}

// checked remembers the result of a check and shows it.
func (g *Equipment) checked(found audit.Soundness) {
	looked := g.session.Say("%s facts, %s loads, %s settlements worked again, %s editions", session.Counted(found.Facts), session.Counted(found.Loads), session.Counted(found.Settlements), session.Counted(found.Editions))
	lines := []string{g.session.Clock(), looked}
	for _, problem := range found.Problems {
		lines = append(lines, g.session.Text(problem))
	}
	g.session.Remember(verifyLast, strings.Join(lines, "\n"))
	if n := len(found.Problems); n > 0 {
		g.session.Notify(model.Stop, g.session.Say("the book is not sound: %d problems. The first: %s", n, found.Problems[0]))
		return
	}
	g.session.Notify(model.OK, g.session.Say("the book is sound: %s.", looked))
}
