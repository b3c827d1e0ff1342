package main

import (
	"tenthpoint/internal/house"
	"tenthpoint/internal/scalehouse"
)

// personCommand keeps the list of people at the desk.
type personCommand struct {
	Add  personAdd  `cmd:"" help:"Add a person, or change what one may do."`
	List personList `cmd:"" help:"List people."`
}

type personAdd struct {
	bookFlags
	whoFlags
	Name string `arg:"" help:"Full name, as it stands on tickets."`
	Role string `help:"What the person may do." enum:"clerk,tester,manager" default:"clerk"`
	Gone bool   `help:"The person is no longer here; old tickets keep the name."`
}

func (personAdd) Help() string {
	return `A manager's act. A clerk weighs and issues, a tester works the bench, a manager also voids, corrects, accepts beyond a limit, closes the day and changes the set-up. The first person must be a manager.

    tenth person add "Mae Orton" --role manager --who "Mae Orton"
    tenth person add "Cal Reyes" --who "Mae Orton"`
}

func (c personAdd) Run(t *terminal) error {
	return c.at(t, writing, c.Who, func(p *post) error {
		if err := scalehouse.SetPerson(p, p.Desk, house.Person{Name: c.Name, Role: house.Role(c.Role), Gone: c.Gone}); err != nil {
			return err
		}
		p.say("%s is written down as %s.", c.Name, c.Role)
		return nil
	})
}

type personList struct {
	bookFlags
	listFlags
}

func (c personList) Run(t *terminal) error {
	return c.at(t, reading, "", func(p *post) error {
		rows := [][]string{}
		for _, person := range p.People() {
			rows = append(rows, []string{person.Name, string(person.Role)})
		}
		return p.table(c.listFlags, []string{"Name", "Role"}, rows, "Nobody is written down yet.")
	})
}
