//go:build !js

package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// In a process of its own the test binary is the command: for what a call of
// run cannot show, such as the environment at the start and a closed pipe.
func TestMain(m *testing.M) {
	if os.Getenv("LYEWRIGHT_IS_THE_COMMAND") != "" {
		main()
	}
	os.Exit(m.Run())
}

// process gives the command as a process, with nothing in its environment but
// the given settings.
func process(t *testing.T, settings []string, args ...string) *exec.Cmd {
	t.Helper()
	program, err := os.Executable()
	if err != nil {
		t.Skip(err)
	}
	c := exec.Command(program, args...)
	c.Env = append(settings, "LYEWRIGHT_IS_THE_COMMAND=1")
	return c
}

func exitStatus(err error) int {
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return exit.ExitCode()
	}
	return 0
}

func TestTheProgramEndsWithTheExitStatus(t *testing.T) {
	for _, test := range []struct {
		status int
		args   []string
	}{
		{done, []string{"batch", formulas + "/single-bar.json"}},
		{dangerous, []string{"batch", formulas + "/benchmark.json"}},
		{wrongInput, []string{"batch", formulas + "/wrong/zero-mass.json"}},
		{wrongInput, []string{"bacth"}},
		{cannotIO, []string{"batch", "none.json"}},
	} {
		if err := process(t, nil, test.args...).Run(); exitStatus(err) != test.status {
			t.Errorf("%v: %v, want exit %d", test.args, err, test.status)
		}
	}
}

// Locale and time zone are read when a process starts, so this runs processes.
func TestTheBytesAreTheSameUnderAnySetting(t *testing.T) {
	for _, args := range [][]string{
		{"batch", "-working", formulas + "/benchmark.json", formulas + "/wrong/everything-at-once.json"},
		{"batch", "-json", formulas + "/benchmark.json"},
		{"oils"},
	} {
		plain, _ := process(t, nil, args...).CombinedOutput()
		if len(plain) == 0 {
			t.Errorf("%v: prints nothing", args)
		}
		for _, settings := range [][]string{
			{"LANG=de_DE.UTF-8", "LC_NUMERIC=de_DE.UTF-8", "TZ=Asia/Kathmandu"},
			{"LC_ALL=tr_TR.UTF-8", "TZ=America/St_Johns", "NO_COLOR=1"},
			{"LC_ALL=C", "TERM=xterm-256color", "CLICOLOR_FORCE=1", "FORCE_COLOR=1", "COLUMNS=40"},
		} {
			if got, _ := process(t, settings, args...).CombinedOutput(); !bytes.Equal(got, plain) {
				t.Errorf("%v: %v changes what is printed", args, settings)
			}
		}
	}
}

func TestAPipeClosedEarlyEndsQuietly(t *testing.T) {
	c := process(t, nil, "batch", "-json", "-lines", "-")
	line := oneLine(t, "lantern-walk.json", "cups") + "\n"
	c.Stdin = strings.NewReader(strings.Repeat(line, 2000))
	var stderr bytes.Buffer
	c.Stderr = &stderr
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	if _, err := io.ReadFull(out, make([]byte, 100)); err != nil {
		t.Fatal(err)
	}
	if err := out.Close(); err != nil {
		t.Fatal(err)
	}
	// The system ends the process, or it ends itself; either way without a word.
	err = c.Wait()
	var exit *exec.ExitError
	if errors.As(err, &exit) && exit.ExitCode() < 0 && exit.Sys().(syscall.WaitStatus).Signal() != syscall.SIGPIPE {
		t.Error(err)
	}
	if stderr.Len() > 0 {
		t.Errorf("says %q", stderr.String())
	}
}

func TestAFileWithoutLeaveToReadCannotBeRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "closed.json")
	if err := os.WriteFile(path, []byte("{}"), 0); err != nil {
		t.Fatal(err)
	}
	if file, err := os.Open(path); err == nil {
		_ = file.Close()
		t.Skip("this user may read everything")
	}
	for _, args := range [][]string{{"batch", path}, {"batch", "-lines", path}, {"check", path}} {
		stdout, stderr, status := lyewright("", args...)
		if status != cannotIO || stdout != "" || stderr != path+": cannot be read: permission denied\n" {
			t.Errorf("%v: exit %d, %q, %q", args, status, stdout, stderr)
		}
	}
}
