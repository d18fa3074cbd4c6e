package main

import (
	"encoding/json"
	"errors"
	"flag"
	"strings"

	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
)

func (c *command) oils(args []string) int {
	flags := flag.NewFlagSet("oils", flag.ContinueOnError)
	flags.Bool("json", false, "")
	ids, status, ok := c.parse(flags, args)
	if !ok {
		return status
	}
	var oils []soap.Oil
	var faults soap.Faults
	for _, id := range ids {
		oil, err := soap.LookUpOil(id)
		if err != nil {
			var fault soap.Fault
			errors.As(err, &fault)
			fault.Path = ""
			if !strings.HasPrefix(fault.Remedy, "did you mean") {
				fault.Remedy = "lyewright oils lists them all"
			}
			faults = append(faults, fault)
			continue
		}
		oils = append(oils, oil)
	}
	if faults != nil {
		return c.fail(wrongInput, faults...)
	}
	if len(ids) == 0 {
		oils = soap.Oils()
	}
	if c.json {
		list, err := json.Marshal(oils)
		if err != nil {
			return c.fail(wrongInput, soap.Fault{Reason: err.Error(), Kind: err})
		}
		return c.print(append(list, '\n'), done)
	}
	var page strings.Builder
	err := writeOils(&page, oils, len(ids) > 0)
	if err != nil {
		return c.fail(cannotIO, soap.Fault{Reason: err.Error(), Kind: err})
	}
	return c.print([]byte(page.String()), done)
}

// writeOils prints a table, or each oil in full.
func writeOils(page *strings.Builder, oils []soap.Oil, full bool) error {
	if !full {
		return sheet.WriteOils(page, oils)
	}
	for _, oil := range oils {
		if err := sheet.WriteOil(page, oil); err != nil {
			return err
		}
	}
	return nil
}
