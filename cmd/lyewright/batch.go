package main

import (
	"flag"
	"io"
	"strconv"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/mould"
	"example.com/lyewright/units"
)

// batchOptions say how batches are printed.
type batchOptions struct {
	json, working bool
	view          view
	beside        soap.Beside // what is known beside the formulas
	pieces        int         // 0: as the formula counts them
	unit          units.Unit
	page          string // the file for a page of its colours; empty: none
}

// view is what is printed of a batch.
type view uint8

const (
	wholeBatch view = iota
	itsCaps         // how much fragrance it may hold
	itsTint         // what colour it will have
)

func (c *command) batch(args []string) int {
	flags := flag.NewFlagSet("batch", flag.ContinueOnError)
	var o batchOptions
	var unit, pieces, swatches string
	var lines bool
	flags.BoolVar(&o.json, "json", false, "")
	flags.BoolVar(&o.working, "working", false, "")
	flags.BoolVar(&lines, "lines", false, "")
	flags.StringVar(&pieces, "pieces", "", "")
	flags.StringVar(&unit, "units", "g", "")
	flags.StringVar(&swatches, "swatches", "", "")
	names, status, ok := c.formulas(flags, args)
	if !ok {
		return status
	}
	if pieces != "" {
		var err error
		if o.pieces, err = strconv.Atoi(pieces); err != nil || o.pieces < 1 || o.pieces > mould.Most {
			return c.usage(pieces, "is not a number of pieces", "write -pieces and a whole number from 1 to 10000")
		}
	}
	if o.json && o.working {
		return c.usage("-json", "does not go with -working", "the working is text; leave one of them out")
	}
	if status, ok := c.sheetUnit(&o, unit); !ok {
		return status
	}
	if status, ok := c.swatches(&o, swatches); !ok {
		return status
	}
	return c.each(names, lines, o)
}

// one prints the batch of a single file, or of standard input, which may turn
// out to be many lines.
func (c *command) one(name string, o batchOptions) int {
	file, fault := c.open(name)
	if fault != nil {
		return c.refuse(name, refused(soap.Faults{*fault}))
	}
	defer closeRead(file)
	var input io.Reader = file
	if name == "-" {
		lines, all, err := peek(file)
		if err != nil {
			return c.refuse(name, refused(soap.Faults{unreadable(err)}))
		}
		if lines && o.page != "" {
			return c.pageOfOne()
		}
		if lines {
			return c.stream("", all, o)
		}
		input = all
	}
	a := answerTo(input, o)
	if a.faults != nil {
		return c.refuse(name, a)
	}
	if fault := writePage(o.page, a.page); fault != nil {
		return c.refuse(o.page, refused(soap.Faults{*fault}))
	}
	return c.print(a.out, a.status)
}

// refuse says on standard error what is wrong with a file.
func (c *command) refuse(name string, a answer) int {
	write := a.writeComplaint
	if c.json {
		write = a.writeObject
	}
	if write(c.stderr, name) != nil {
		return cannotIO
	}
	return a.status
}

// several prints the batches of one of several files.
func (c *command) several(name string, lines bool, o batchOptions) int {
	file, fault := c.open(name)
	if fault != nil {
		return c.report(refused(soap.Faults{*fault}), name, o)
	}
	defer closeRead(file)
	var input io.Reader = file
	if name == "-" && !lines {
		var err error
		if lines, input, err = peek(file); err != nil {
			return c.report(refused(soap.Faults{unreadable(err)}), name, o)
		}
	}
	if !lines {
		return c.report(answerTo(input, o), name, o)
	}
	if name == "-" {
		name = ""
	}
	return c.stream(name, input, o)
}

// report prints one of several answers: in its place on standard output with
// -json, else what is wrong on standard error.
func (c *command) report(a answer, name string, o batchOptions) int {
	switch {
	case o.json:
		if err := a.writeObject(c.stdout, name); err != nil {
			return c.cannotWrite(err)
		}
		return a.status
	case a.faults != nil:
		return c.refuse(name, a)
	case c.printed:
		a.out = append([]byte("\n\n"), a.out...) // a sheet stands apart from the one before
	}
	c.printed = true
	return c.print(a.out, a.status)
}
