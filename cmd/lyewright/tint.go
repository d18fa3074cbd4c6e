package main

import (
	"errors"
	"flag"
	"os"

	"example.com/lyewright/soap"
)

func (c *command) tint(args []string) int {
	flags := flag.NewFlagSet("tint", flag.ContinueOnError)
	o := batchOptions{view: itsTint}
	var unit, swatches string
	var lines bool
	flags.BoolVar(&o.json, "json", false, "")
	flags.BoolVar(&lines, "lines", false, "")
	flags.StringVar(&o.page, "html", "", "")
	flags.StringVar(&swatches, "swatches", "", "")
	flags.StringVar(&unit, "units", "g", "")
	names, status, ok := c.formulas(flags, args)
	if !ok {
		return status
	}
	if o.page != "" && (len(names) > 1 || lines) {
		return c.pageOfOne()
	}
	if status, ok := c.sheetUnit(&o, unit); !ok {
		return status
	}
	if status, ok := c.swatches(&o, swatches); !ok {
		return status
	}
	return c.each(names, lines, o)
}

func (c *command) pageOfOne() int {
	return c.usage("-html", "makes the page of one formula", "name one file, without -lines")
}

// swatches reads a file of swatches, where one is named.
func (c *command) swatches(o *batchOptions, name string) (status int, ok bool) {
	if name == "" {
		return done, true
	}
	text, fault := c.read(name)
	if fault != nil {
		return c.refuse(name, refused(soap.Faults{*fault})), false
	}
	swatches, _, err := soap.ParseSwatches(text)
	var faults soap.Faults
	if errors.As(err, &faults) {
		return c.refuse(name, refused(faults)), false
	}
	o.beside.Swatches = swatches
	return done, true
}

// writePage writes a page into a file, where one is named.
func writePage(name string, page []byte) *soap.Fault {
	if name == "" {
		return nil
	}
	if err := os.WriteFile(name, page, 0o644); err != nil {
		return &soap.Fault{Reason: "cannot be written: " + pathless(err), Kind: errUnreadable}
	}
	return nil
}
