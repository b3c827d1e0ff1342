package older

import (
	"archive/tar"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// beforeRebuild is the program that old books and papers are compared with: the last commit before
// the packages were laid out by area.
const beforeRebuild = "d9a3d3b"

// terminalProgram builds the terminal program of a source tree so that its
// clock can be set from outside: it is the test binary of cmd/tenth, which is
// the program itself when it is called "tenth".
func terminalProgram(tree, folder string) (string, error) {
	program := filepath.Join(folder, "tenth")
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	cmd := toolchain.Go(toolchain.WithoutCgo, "test", "-c", "-buildvcs=false", "-o", program, "./cmd/tenth")
	cmd.Dir = tree
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("building the terminal program of %s: %w", tree, err)
	}
	return program, nil
}

// programAt is the terminal program of a revision of this repository, or the
// file of that name if there is one.
func programAt(revision, folder string) (string, error) {
	if info, err := os.Stat(revision); err == nil && !info.IsDir() {
		return filepath.Abs(revision)
	}
	tree := filepath.Join(folder, "tree")
	if err := unpackRevision(revision, tree); err != nil {
		return "", err
	}
	return terminalProgram(tree, folder)
}

// unpackRevision writes the files of a revision into a folder. The repository
// itself is only read.
func unpackRevision(revision, folder string) error {
	find := exec.Command("git", "rev-parse", "--verify", "--quiet", revision+"^{commit}")
	if _, err := find.Output(); err != nil {
		return fmt.Errorf("the history of this checkout does not hold the revision %s: it is a shallow clone or a copy without .git. Fetch it (git fetch --unshallow), or name a program built elsewhere", revision)
	}
	archive := exec.Command("git", "archive", "--format=tar", revision)
	archive.Stderr = os.Stderr
	stream, err := archive.StdoutPipe()
	if err != nil {
		return err
	}
	if err := archive.Start(); err != nil {
		return err
	}
	err = unpackTar(stream, folder)
	_, _ = io.Copy(io.Discard, stream) // so that git can end
	return errors.Join(err, archive.Wait())
}

func unpackTar(stream io.Reader, folder string) error {
	files := tar.NewReader(stream)
	for {
		head, err := files.Next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		if head.Typeflag != tar.TypeReg || !filepath.IsLocal(head.Name) {
			continue
		}
		if err := writeFrom(files, filepath.Join(folder, filepath.FromSlash(head.Name))); err != nil {
			return err
		}
	}
}

// writeFrom writes the rest of a stream to a file, with its folders.
func writeFrom(stream io.Reader, path string) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	_, err = io.Copy(file, stream)
	return errors.Join(err, file.Close())
}

// runSeed runs a Go program inside an unpacked tree, for tasks the terminal program of that tree
// cannot do.
func runSeed(tree, source string, args ...string) error {
	text, err := os.ReadFile(source)
	if err != nil {
		return err
	}
	if err := writeFrom(strings.NewReader(string(text)), filepath.Join(tree, "cmd", "seed", "main.go")); err != nil {
		return err
	}
	cmd := toolchain.Go(toolchain.WithoutCgo, append([]string{"run", "-buildvcs=false", "./cmd/seed"}, args...)...)
	cmd.Dir = tree
	return cmd.Run()
}
