package main

import (
	"bufio"
	"net"
	"os"
	"path/filepath"
	"time"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
)

// errAlreadyOpen ends a second start on a book: the window that is open has come forward.
var errAlreadyOpen = message.Refused.Errorf("The desk is open on this book already. Its window comes forward")

// A second start talks to the first window through a socket in the folder of this person's settings.
// Nothing else of the computer, and nobody else, can reach it.
const (
	askForward    = "forward\n"
	comesForward  = "coming\n"
	answerTimeout = 2 * time.Second
)

// windowSocket is the path of the socket of a book's window.
func windowSocket(book string) (string, error) {
	folder, err := os.UserConfigDir()
	if err != nil {
		return "", err
	}
	if whole, err := filepath.Abs(book); err == nil {
		book = whole
	}
	return filepath.Join(folder, "tenthpoint", "window-"+digest.Of([]byte(book))[:12]+".sock"), nil
}

// claimWindow makes this program the one with the window of a book. Where another has it, that one is
// asked to come forward and errAlreadyOpen is returned. A socket that a killed program left behind
// does not count, and where no socket can be made the desk opens all the same.
func claimWindow(book string, forward func()) (release func() error, err error) {
	none := func() error { return nil }
	path, err := windowSocket(book)
	if err != nil || os.MkdirAll(filepath.Dir(path), 0o700) != nil {
		return none, nil
	}
	listener, err := net.Listen("unix", path)
	if err != nil && isAnswered(path) {
		return none, errAlreadyOpen
	}
	if err != nil && os.Remove(path) == nil {
		listener, err = net.Listen("unix", path)
	}
	if err != nil {
		return none, nil
	}
	go answer(listener, forward)
	return listener.Close, nil
}

// isAnswered asks the window behind a socket to come forward, and reports whether there is one.
func isAnswered(path string) bool {
	conn, err := net.DialTimeout("unix", path, answerTimeout)
	if err != nil {
		return false
	}
	defer conn.Close()
	_ = conn.SetDeadline(time.Now().Add(answerTimeout))
	if _, err := conn.Write([]byte(askForward)); err != nil {
		return false
	}
	said, _ := bufio.NewReader(conn).ReadString('\n')
	return said == comesForward
}

// answer brings the window forward for each start that asks, until the listener is closed.
func answer(listener net.Listener, forward func()) {
	for {
		conn, err := listener.Accept()
		if err != nil {
			return
		}
		_ = conn.SetDeadline(time.Now().Add(answerTimeout))
		if asked, _ := bufio.NewReader(conn).ReadString('\n'); asked == askForward {
			forward()
			_, _ = conn.Write([]byte(comesForward))
		}
		_ = conn.Close()
	}
}
