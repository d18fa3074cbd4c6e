// Command lyewright works out a batch of cold-process soap from a formula file:
// what to weigh, how sure the superfat is, and what is wrong with the plan.
package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"strings"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/soap"
)

// The exit status.
const (
	done       = 0
	dangerous  = 1 // done, with a finding of danger
	wrongInput = 2 // the input or the usage is wrong
	cannotIO   = 3 // a file cannot be read or written
	internal   = 4 // the program failed on a formula: a mistake of the program
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	c := &command{stdin: stdin, stdout: stdout, stderr: stderr}
	if len(args) == 0 {
		return c.usage("", "no command is given", "write one of "+strings.Join(verbs(), ", "))
	}
	verb, rest := args[0], args[1:]
	switch verb {
	case "batch":
		return c.batch(rest)
	case "check":
		return c.check(rest)
	case "cap":
		return c.cap(rest)
	case "tint":
		return c.tint(rest)
	case "colourants":
		return c.colourants(rest)
	case "fragrance":
		return c.fragrance(rest)
	case "oils":
		return c.oils(rest)
	case "lye":
		return c.lye(rest)
	case "version", "-version", "--version":
		return c.version(rest)
	case "help", "-h", "-help", "--help":
		return c.help(rest)
	}
	remedy := nearest.Remedy(verb, verbs())
	if remedy == "" {
		remedy = "the commands are " + strings.Join(verbs(), ", ")
	}
	return c.usage(verb, "is not a command", remedy)
}

func verbs() []string {
	return []string{"batch", "check", "cap", "tint", "oils", "fragrance", "colourants", "lye", "version", "help"}
}

// command is one run of the program.
type command struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	json           bool
	printed        bool // a sheet was printed
	broken         bool // the result cannot be written: nothing more is tried
}

// print writes a result; the exit status is the given one unless that fails.
func (c *command) print(result []byte, status int) int {
	if _, err := c.stdout.Write(result); err != nil {
		return c.cannotWrite(err)
	}
	return status
}

func (c *command) cannotWrite(err error) int {
	c.broken = true
	return c.fail(cannotIO, soap.Fault{Reason: "the result cannot be written: " + err.Error(), Kind: err})
}

// usage says what is wrong with the command line.
func (c *command) usage(text, reason, remedy string) int {
	return c.fail(wrongInput, soap.Fault{Text: text, Reason: reason, Remedy: remedy, Kind: soap.ErrFormat})
}

// fail says on standard error what went wrong, as of the command itself.
func (c *command) fail(status int, faults ...soap.Fault) int {
	a := answer{faults: faults, status: status}
	if !c.json {
		return c.refuse("lyewright", a)
	}
	text, err := a.faults.MarshalJSON()
	if err == nil {
		_, err = c.stderr.Write(append(text, '\n'))
	}
	if err != nil {
		return cannotIO
	}
	return status
}

// open opens a file to read; "-" is standard input.
func (c *command) open(name string) (io.ReadCloser, *soap.Fault) {
	if name == "-" {
		return io.NopCloser(c.stdin), nil
	}
	file, err := os.Open(name)
	if err != nil {
		fault := unreadable(err)
		return nil, &fault
	}
	if info, err := file.Stat(); err == nil && info.IsDir() {
		closeRead(file)
		return nil, &soap.Fault{Reason: "is a directory", Remedy: "name the formula files in it, such as " + strings.TrimRight(name, "/") + "/*.json", Kind: soap.ErrFormat}
	}
	return file, nil
}

// closeRead closes a file that was only read: nothing can be lost by it.
func closeRead(file io.Closer) { _ = file.Close() }

// errUnreadable marks the faults that end with exit status 3.
var errUnreadable = errors.New("cannot be read")

// unreadable makes a fault of a file that cannot be read.
func unreadable(err error) soap.Fault {
	return soap.Fault{Reason: "cannot be read: " + pathless(err), Kind: errUnreadable}
}

// pathless says what went wrong with a file without naming it once more.
func pathless(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// statusOf gives the exit status that faults ask for.
func statusOf(faults soap.Faults) int {
	status := wrongInput
	for _, f := range faults {
		switch {
		case errors.Is(f.Kind, soap.ErrInternal):
			status = internal
		case errors.Is(f.Kind, errUnreadable):
			status = max(status, cannotIO)
		}
	}
	return status
}
