package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// triedSites are the letters and names of the sites of an office that is tried out.
var triedSites = [][2]string{{"KH", "Kent Hill"}, {"ELM", "Elm Creek"}, {"ORC", "Orchard Siding"}}

// A triedOffice is a head office with invented sites, on a server and in a folder of its own.
type triedOffice struct {
	server
	program string
}

// openOffice makes an office whose sites have so many loads each.
func openOffice(loads int) (*triedOffice, error) {
	programs, err := postgresPrograms()
	if err != nil {
		return nil, err
	}
	program, err := build(toolchain.WithoutCgo, "./cmd/tenth")
	if err != nil {
		return nil, err
	}
	folder, err := os.MkdirTemp("", "tenthpoint-office-")
	if err != nil {
		return nil, err
	}
	o := &triedOffice{server: server{programs: programs, folder: folder}, program: program}
	if err := o.start(); err != nil {
		return nil, errors.Join(err, os.RemoveAll(folder))
	}
	if err := os.Mkdir(o.work(), 0o755); err != nil {
		return nil, errors.Join(err, o.close())
	}
	if err := o.fill(loads); err != nil {
		return nil, errors.Join(err, o.close())
	}
	return o, nil
}

// work is the folder of the books, which the server does not own.
func (o *triedOffice) work() string { return filepath.Join(o.folder, "work") }

func (o *triedOffice) book(letters string) string { return filepath.Join(o.work(), letters+".book") }

func (o *triedOffice) fill(loads int) error {
	if err := o.say("", "office", "setup"); err != nil {
		return err
	}
	for i, site := range triedSites {
		if err := o.say("", "office", "add", site[0], site[1]); err != nil {
			return err
		}
		if err := o.say(site[0], "demo", "--loads", fmt.Sprint(loads), "--seed", fmt.Sprint(i+1)); err != nil {
			return err
		}
	}
	return nil
}

// environment is what a command is told by: of a site, that it signs in as the site.
func (o *triedOffice) environment(letters string) []string {
	role := "tenthpoint"
	if letters != "" {
		role = "head_office_site_" + strings.ToLower(letters)
	}
	env := []string{"TENTHPOINT_OFFICE=host=" + o.folder + " dbname=postgres user=" + role, "TENTHPOINT_COPIES=" + filepath.Join(o.work(), "copies")}
	if letters != "" {
		env = append(env, "TENTHPOINT_LETTERS="+letters, "TENTHPOINT_BOOK="+o.book(letters))
	}
	return env
}

// tenth is a command of the terminal program, at a site or with no letters at the office.
func (o *triedOffice) tenth(letters string, args ...string) *exec.Cmd {
	cmd := exec.Command(o.program, args...)
	cmd.Env = append(os.Environ(), o.environment(letters)...)
	return cmd
}

// say runs a command and shows what it prints.
func (o *triedOffice) say(letters string, args ...string) error {
	cmd := o.tenth(letters, args...)
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("tenth %s: %w", strings.Join(args, " "), err)
	}
	return nil
}

func (o *triedOffice) close() error { return errors.Join(o.stop(), os.RemoveAll(o.folder)) }

// runOffice opens an office for somebody to look at, until Enter is pressed. Two of its sites send
// what they have; the third lost its line after some loads and works on.
func runOffice() (err error) {
	toolchain.Say("Making a head office and three sites. Everything in it is an example - not for trade.")
	o, err := openOffice(120)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, o.close()) }()
	for _, site := range triedSites {
		if err := o.say(site[0], "office", "send"); err != nil {
			return err
		}
	}
	offline := triedSites[2][0]
	if err := o.say(offline, "grower", "add", "950", "Came while the line was down"); err != nil {
		return err
	}
	toolchain.Say("\nSite %s is offline from here on, and works on. At the office:\n", offline)
	for _, look := range [][]string{{"office", "sites"}, {"office", "position"}, {"office", "audit"}} {
		if err := o.say("", look...); err != nil {
			return err
		}
	}
	toolchain.Say("\nThe office is open until you press Enter. In another terminal:\n")
	for _, setting := range o.environment("") {
		name, value, _ := strings.Cut(setting, "=")
		toolchain.Say("    export %s=%q", name, value)
	}
	toolchain.Say("    %s office find corn", o.program)
	toolchain.Say("    %s office sheets", o.program)
	toolchain.Say("    %s show 12 --book \"$(%s office book KH)\"", o.program, o.program)
	toolchain.Say("The line of %s is mended by:", offline)
	toolchain.Say("    %s office send --book %s --letters %s", o.program, o.book(offline), offline)
	_, err = bufio.NewReader(os.Stdin).ReadString('\n')
	if err != nil && !errors.Is(err, io.EOF) {
		return err
	}
	return nil
}
