package main

import (
	"bytes"
	"flag"

	"example.com/lyewright/internal/jsonwrite"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/lye"
	"example.com/lyewright/soap/sheet"
)

// acids lists the acids that a formula may name.
func (c *command) acids(args []string) int {
	flags := flag.NewFlagSet("lye acids", flag.ContinueOnError)
	flags.Bool("json", false, "")
	more, status, ok := c.parse(flags, args)
	if !ok {
		return status
	}
	if len(more) > 0 {
		return c.usage(more[0], "is more than lye acids needs", "leave it out: all acids are listed")
	}
	if c.json {
		return c.print(append(acidsObject(), '\n'), done)
	}
	var page bytes.Buffer
	if err := sheet.WriteAcids(&page, lye.Acids()); err != nil {
		return c.fail(cannotIO, soap.Fault{Reason: err.Error(), Kind: err})
	}
	return c.print(page.Bytes(), done)
}

func acidsObject() []byte {
	w := jsonwrite.New()
	w.Object("", func() {
		w.Text("schema", "lye-acids/1")
		w.Text("data_edition", soap.DataEdition())
		w.List("acids", func() {
			for _, a := range lye.Acids() {
				w.Object("", func() {
					w.Text("acid", a.ID)
					w.Text("name", a.Name)
					w.Text("formula", a.Formula)
					w.Number("molar_g_per_mol", a.Molar.Text(3))
					w.Bool("strength_needed", a.Dissolved)
					w.Texts("names", a.Names())
				})
			}
		})
		w.Text("source", lye.AtomicWeights().String())
	})
	return w.Bytes()
}
