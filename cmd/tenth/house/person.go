package house

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
)

// Person keeps the list of people at the desk.
type Person struct {
	Add    personAdd    `cmd:"" help:"Add a person, or change what one may do."`
	PIN    personPIN    `cmd:"" name:"pin" help:"Give a person a PIN, or another one."`
	Forgot personForgot `cmd:"" help:"Take a forgotten PIN away."`
	List   personList   `cmd:"" default:"withargs" help:"List people."`
}

type personAdd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Name string `arg:"" help:"Full name, as it stands on tickets."`
	Role string `help:"What the person may do." enum:"clerk,tester,manager" default:"clerk"`
	Gone bool   `help:"The person is no longer here; old tickets keep the name."`
}

func (personAdd) Help() string {
	return `A manager's act. A clerk weighs and issues, a tester works the bench, a manager also voids, corrects, accepts beyond a limit, closes the day and changes the set-up. The first person must be a manager.

    tenth person add "Mae Orton" --role manager --who "Mae Orton"
    tenth person add "Cal Reyes" --who "Mae Orton"`
}

func (c personAdd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		if err := scalehouse.SetPerson(p, p.Desk, elevator.Person{Name: c.Name, Role: elevator.Role(c.Role), Gone: c.Gone}); err != nil {
			return err
		}
		p.Say("%s is written down as %s.", c.Name, c.Role)
		return nil
	})
}

type personList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (c personList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		rows := [][]any{}
		for _, person := range p.People() {
			rows = append(rows, []any{person.Name, message.Words(string(person.Role))})
		}
		return p.Table(c.ListFlags, "Name\tRole", rows, "Nobody is written down yet.")
	})
}
