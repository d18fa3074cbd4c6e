package main

import (
	"encoding/json"
	"errors"
	"flag"
	"strings"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
)

func (c *command) fragrance(args []string) int {
	flags := flag.NewFlagSet("fragrance", flag.ContinueOnError)
	flags.Bool("json", false, "")
	ids, status, ok := c.parse(flags, args)
	if !ok {
		return status
	}
	var materials []fragrance.Material
	var faults soap.Faults
	for _, id := range ids {
		m, err := fragrance.LookUp(id)
		if err != nil {
			var fault soap.Fault
			errors.As(err, &fault)
			fault.Path = ""
			if !strings.HasPrefix(fault.Remedy, "did you mean") {
				fault.Remedy = "lyewright fragrance lists them all"
			}
			faults = append(faults, fault)
			continue
		}
		materials = append(materials, m)
	}
	if faults != nil {
		return c.fail(wrongInput, faults...)
	}
	if len(ids) == 0 {
		materials = fragrance.Materials()
	}
	if c.json {
		list, err := json.Marshal(materials)
		if err != nil {
			return c.fail(wrongInput, soap.Fault{Reason: err.Error(), Kind: err})
		}
		return c.print(append(list, '\n'), done)
	}
	var page strings.Builder
	if err := writeFragrances(&page, materials, len(ids) > 0); err != nil {
		return c.fail(cannotIO, soap.Fault{Reason: err.Error(), Kind: err})
	}
	return c.print([]byte(page.String()), done)
}

// writeFragrances prints a table, or each material in full.
func writeFragrances(page *strings.Builder, materials []fragrance.Material, full bool) error {
	if !full {
		return sheet.WriteFragrances(page, materials)
	}
	for _, m := range materials {
		if err := sheet.WriteFragrance(page, m); err != nil {
			return err
		}
	}
	return nil
}
