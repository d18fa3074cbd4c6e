package main

import (
	"flag"

	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/soap"
	"example.com/lyewright/units"
)

func (c *command) cap(args []string) int {
	flags := flag.NewFlagSet("cap", flag.ContinueOnError)
	o := batchOptions{view: itsCaps}
	var law, unit, swatches string
	var lines bool
	flags.BoolVar(&o.json, "json", false, "")
	flags.BoolVar(&lines, "lines", false, "")
	flags.StringVar(&law, "law", "", "")
	flags.StringVar(&unit, "units", "g", "")
	flags.StringVar(&swatches, "swatches", "", "")
	names, status, ok := c.formulas(flags, args)
	if !ok {
		return status
	}
	switch law {
	case "":
	case "ifra":
		o.beside.Law = soap.IFRAAlone
	case "eu":
		o.beside.Law = soap.WithEU
	default:
		remedy := nearest.Remedy(law, []string{"ifra", "eu"})
		if remedy == "" {
			remedy = "write -law ifra for the IFRA Standards alone, or -law eu for European law too"
		}
		return c.usage(law, "is not a law that is held", remedy)
	}
	if status, ok := c.sheetUnit(&o, unit); !ok {
		return status
	}
	if status, ok := c.swatches(&o, swatches); !ok {
		return status
	}
	return c.each(names, lines, o)
}

// sheetUnit reads the unit of a sheet.
func (c *command) sheetUnit(o *batchOptions, unit string) (status int, ok bool) {
	if o.unit, ok = units.ParseUnit(unit); !ok || o.unit != units.Gram && o.unit != units.Ounce {
		return c.usage(unit, "is not a unit for the sheet", "write -units g or -units oz"), false
	}
	if o.json && o.unit != units.Gram {
		return c.usage("-json", "does not go with -units", "the JSON is always in grams; leave one of them out"), false
	}
	return done, true
}

// each prints what is asked for of every file.
func (c *command) each(names []string, lines bool, o batchOptions) int {
	if len(names) == 1 && !lines {
		return c.one(names[0], o)
	}
	status := done
	for _, name := range names {
		if status = max(status, c.several(name, lines, o)); c.broken {
			break
		}
	}
	return status
}
