package main

import (
	"encoding/json"
	"errors"
	"flag"
	"io"
	"strings"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
)

// catalogue is a built-in table: listed, or what is named of it printed in full.
type catalogue[T any] struct {
	verb   string
	lookUp func(id string) (T, error)
	all    func() []T
	table  func(io.Writer, []T) error
	full   func(io.Writer, T) error
}

func (c *command) oils(args []string) int {
	return catalogue[soap.Oil]{"oils", soap.LookUpOil, soap.Oils, sheet.WriteOils, sheet.WriteOil}.print(c, args)
}

func (c *command) fragrance(args []string) int {
	return catalogue[fragrance.Material]{"fragrance", fragrance.LookUp, fragrance.Materials, sheet.WriteFragrances, sheet.WriteFragrance}.print(c, args)
}

func (c *command) colourants(args []string) int {
	return catalogue[colour.Colourant]{"colourants", colour.LookUp, colour.Colourants, sheet.WriteColourants, sheet.WriteColourant}.print(c, args)
}

func (k catalogue[T]) print(c *command, args []string) int {
	flags := flag.NewFlagSet(k.verb, flag.ContinueOnError)
	flags.Bool("json", false, "")
	ids, status, ok := c.parse(flags, args)
	if !ok {
		return status
	}
	var rows []T
	var faults soap.Faults
	for _, id := range ids {
		row, err := k.lookUp(id)
		if err != nil {
			var fault soap.Fault
			errors.As(err, &fault)
			fault.Path = ""
			if !strings.HasPrefix(fault.Remedy, "did you mean") && !strings.HasPrefix(fault.Remedy, "write ") {
				fault.Remedy = "lyewright " + k.verb + " lists them all"
			}
			faults = append(faults, fault)
			continue
		}
		rows = append(rows, row)
	}
	if faults != nil {
		return c.fail(wrongInput, faults...)
	}
	if len(ids) == 0 {
		rows = k.all()
	}
	if c.json {
		list, err := json.Marshal(rows)
		if err != nil {
			return c.fail(wrongInput, soap.Fault{Reason: err.Error(), Kind: err})
		}
		return c.print(append(list, '\n'), done)
	}
	var page strings.Builder
	if err := k.write(&page, rows, len(ids) > 0); err != nil {
		return c.fail(cannotIO, soap.Fault{Reason: err.Error(), Kind: err})
	}
	return c.print([]byte(page.String()), done)
}

// write prints a table, or each row in full.
func (k catalogue[T]) write(page *strings.Builder, rows []T, full bool) error {
	if !full {
		return k.table(page, rows)
	}
	for _, row := range rows {
		if err := k.full(page, row); err != nil {
			return err
		}
	}
	return nil
}
