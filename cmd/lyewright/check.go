package main

import (
	"bytes"
	"cmp"
	"errors"
	"flag"
	"fmt"
	"io"

	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

func (c *command) check(args []string) int {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	var o batchOptions
	var swatches string
	flags.StringVar(&swatches, "swatches", "", "")
	names, status, ok := c.formulas(flags, args)
	if !ok {
		return status
	}
	if status, ok := c.swatches(&o, swatches); !ok {
		return status
	}
	for _, name := range names {
		if status = max(status, c.checkFile(name, o)); c.broken {
			break
		}
	}
	return status
}

// checkFile prints a line for every finding or fault of a file.
func (c *command) checkFile(name string, o batchOptions) int {
	a := checked(shown(name), func() (soap.Batch, soap.Places, soap.Faults) {
		text, fault := c.read(name)
		if fault != nil {
			fault.Line, fault.Column = 1, 1
			return soap.Batch{}, soap.Places{}, soap.Faults{*fault}
		}
		return batchOf(text, o)
	})
	return c.print(a.out, a.status)
}

// checked gives the lines of one formula, under the name of its file. Where the program fails at any of them, the
// one line that says so is all: the files after it are checked all the same.
func checked(name string, work func() (soap.Batch, soap.Places, soap.Faults)) answer {
	a := contained(func() answer {
		batch, places, faults := work()
		if faults != nil {
			return refused(faults)
		}
		var lines bytes.Buffer
		for _, f := range batch.Findings {
			line, column := places.Find(f.Subject)
			fmt.Fprintf(&lines, "%s:%d:%d: %s %s %s: %s\n", name, line, column, f.Severity, f.Code, f.Subject, f.Message())
		}
		return answer{out: lines.Bytes(), status: statusOfBatch(batch)}
	})
	var lines bytes.Buffer
	for _, f := range a.faults {
		fmt.Fprintf(&lines, "%s:%d:%d: error %s %s: %s\n", name, max(1, f.Line), max(1, f.Column), faultCode(f),
			shown(subject(f.Path)), f.Sentence())
	}
	a.out = append(a.out, lines.Bytes()...)
	return a
}

// read reads a file, at most a byte more than a formula may have.
func (c *command) read(name string) ([]byte, *soap.Fault) {
	file, fault := c.open(name)
	if fault != nil {
		return nil, fault
	}
	defer closeRead(file)
	text, err := io.ReadAll(io.LimitReader(file, soap.MostBytes+1))
	if err != nil {
		fault := unreadable(err)
		return nil, &fault
	}
	return text, nil
}

// subject names what a fault of the whole file is about.
func subject(path string) string { return cmp.Or(path, "file") }

// faultCode gives a word for the kind of a fault.
func faultCode(f soap.Fault) string {
	for _, kind := range []struct {
		err  error
		code string
	}{
		{soap.ErrUnknown, "unknown-name"},
		{soap.ErrMissing, "missing"},
		{soap.ErrConflict, "conflict"},
		{soap.ErrRange, "out-of-bounds"},
		{soap.ErrFormat, "wrong-form"},
		{soap.ErrImpossible, "impossible"},
		{soap.ErrLimit, "limit"},
		{units.ErrSyntax, "not-a-quantity"},
		{units.ErrUnit, "wrong-unit"},
		{units.ErrSize, "out-of-bounds"},
		{errUnreadable, "unreadable"},
		{soap.ErrInternal, "internal"},
	} {
		if errors.Is(f, kind.err) {
			return kind.code
		}
	}
	return "wrong"
}
