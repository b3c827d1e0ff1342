package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"tenthpoint/cmd/task/toolchain"
)

// scriptsOnPostgres are the scripts of commands that need a server.
var scriptsOnPostgres = []string{"-run", "TestOfficeScripts", "./cmd/tenth"}

// bookOnPostgres is the engine of books on a server.
const bookOnPostgres = "./internal/book/postgres"

// onPostgres are the packages whose tests need a server.
var onPostgres = []string{bookOnPostgres, "./internal/book/engines", "./internal/headoffice/..."}

// postgresChore runs the test suite of the book on a temporary PostgreSQL server, which lives in a
// temporary folder and listens only on a socket in it. Packages named are tested alone; flags are
// passed on to `go test`.
func postgresChore(args []string) (err error) {
	named := 0
	for named < len(args) && strings.HasPrefix(args[named], "./") {
		named++
	}
	packages, args := args[:named], args[named:]
	sync := slices.ContainsFunc(args, func(arg string) bool { return strings.HasPrefix(arg, "-bench") })
	return withServer(sync, func(env []string) error {
		tests := func(what []string) error {
			return toolchain.Go(env, slices.Concat([]string{"test", "-tags", "postgres", "-count", "1"}, what, args)...).Run()
		}
		if named > 0 {
			return tests(packages)
		}
		return errors.Join(tests(onPostgres), tests(scriptsOnPostgres))
	})
}

// withServer starts a server, hands on the environment in which tests find it, and stops it. It waits
// for its disk where that is measured.
func withServer(sync bool, do func(env []string) error) (err error) {
	programs, err := postgresPrograms()
	if err != nil {
		return err
	}
	folder, err := os.MkdirTemp("", "tenthpoint-postgres-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	s := server{programs: programs, folder: folder, sync: sync}
	if err := s.start(); err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.stop()) }()
	return do(append([]string{"TENTHPOINT_POSTGRES=host=" + folder + " user=tenthpoint dbname=postgres"}, toolchain.WithoutCgo...))
}

// serverStep runs the tests that need a server on one of its own, as an ordinary user.
func serverStep() (t tally) {
	err := withServer(false, func(env []string) error {
		t = testStep("books and an office on a PostgreSQL server", env, append([]string{"-tags=postgres"}, onPostgres...)...)
		t.add(testStep("the commands of an office", env, append([]string{"-tags=postgres"}, scriptsOnPostgres...)...))
		return nil
	})
	if err == nil {
		err = withServer(false, func(env []string) error {
			t.add(testStep("a server that is killed", env, "-tags=postgres,crash", "-run=KilledAtRandom", bookOnPostgres))
			return nil
		})
	}
	if err == nil {
		t.count(killStep())
	}
	if err != nil {
		toolchain.Say("\n== books and an office on a PostgreSQL server: FAILED, %v", err)
		t.count(false)
	}
	return t
}

// postgresPrograms returns the folder of PostgreSQL's programs: the newest version in Debian's
// place, or one in the path.
func postgresPrograms() (string, error) {
	found, err := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	if err != nil {
		return "", err
	}
	if len(found) > 0 {
		slices.Sort(found)
		return filepath.Dir(found[len(found)-1]), nil
	}
	if path, err := exec.LookPath("initdb"); err == nil {
		return filepath.Dir(path), nil
	}
	return "", errors.New("there is no PostgreSQL here. On Debian and Ubuntu: " + aptLine(serverNeeds()) + "; or check --without postgres")
}

// server is a PostgreSQL server that lives as long as a chore.
type server struct {
	programs, folder string
	sync             bool
	running          *exec.Cmd
	ended            chan error
}

func (s *server) data() string { return filepath.Join(s.folder, "data") }

var onOff = map[bool]string{true: "on", false: "off"}

// command is one of PostgreSQL's programs. They refuse to run as root, and then run
// as nobody.
func (s *server) command(name string, args ...string) *exec.Cmd {
	line := append([]string{filepath.Join(s.programs, name)}, args...)
	if os.Geteuid() == 0 {
		line = append([]string{"setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups"}, line...)
	}
	cmd := exec.Command(line[0], line[1:]...)
	cmd.Dir = s.folder
	return cmd
}

func (s *server) start() error {
	if os.Geteuid() == 0 {
		if out, err := exec.Command("chown", "nobody:nogroup", s.folder).CombinedOutput(); err != nil {
			return fmt.Errorf("%w: %s", err, out)
		}
	}
	made := s.command("initdb", "-D", s.data(), "-U", "tenthpoint", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync")
	if out, err := made.CombinedOutput(); err != nil {
		return fmt.Errorf("the server cannot be made: %w: %s", err, out)
	}
	return s.run()
}

// run runs the server that was made.
func (s *server) run() error {
	log, err := os.Create(filepath.Join(s.folder, "log"))
	if err != nil {
		return err
	}
	defer log.Close()
	s.running = s.command("postgres", "-D", s.data(), "-c", "listen_addresses=", "-c", "unix_socket_directories="+s.folder, "-c", "fsync="+onOff[s.sync])
	s.running.Stdout, s.running.Stderr = log, log
	if err := s.running.Start(); err != nil {
		return err
	}
	s.ended = make(chan error, 1)
	go func() { s.ended <- s.running.Wait() }()
	return s.ready()
}

// ready waits until the server answers.
func (s *server) ready() error {
	for range 300 {
		if s.command("pg_isready", "-q", "-h", s.folder).Run() == nil {
			return nil
		}
		select {
		case err := <-s.ended:
			log, _ := os.ReadFile(filepath.Join(s.folder, "log"))
			return fmt.Errorf("the server ended at once: %v\n%s", err, log)
		case <-time.After(100 * time.Millisecond):
		}
	}
	return errors.Join(errors.New("the server does not answer within half a minute"), s.stop())
}

// stop ends the server that start began.
func (s *server) stop() error {
	if out, err := s.command("pg_ctl", "-D", s.data(), "-m", "immediate", "stop").CombinedOutput(); err != nil {
		return errors.Join(fmt.Errorf("the server cannot be stopped: %w: %s", err, out), s.running.Process.Kill())
	}
	<-s.ended
	return nil
}
