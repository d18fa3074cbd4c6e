package main

import (
	"flag"
	"io"
	"strings"

	"example.com/lyewright/internal/nearest"
)

// parse reads flags that stand before or after the file names; "--" ends them.
// ok is false when the command line was wrong or asked for help, with the exit
// status to end with.
func (c *command) parse(flags *flag.FlagSet, args []string) (names []string, status int, ok bool) {
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	for _, arg := range args {
		if arg == "--" {
			break
		}
		c.json = c.json || asksJSON(arg)
	}
	defer func() {
		if json := flags.Lookup("json"); ok && json != nil {
			c.json = json.Value.String() == "true"
		}
	}()
	for len(args) > 0 {
		if err := flags.Parse(args); err != nil {
			if err == flag.ErrHelp {
				return nil, c.help(strings.Fields(flags.Name())), false
			}
			return nil, c.badFlag(flags, err), false
		}
		rest := flags.Args()
		if ended := len(rest) < len(args) && args[len(args)-len(rest)-1] == "--"; ended {
			return append(names, rest...), done, true
		}
		if len(rest) == 0 {
			break
		}
		names, args = append(names, rest[0]), rest[1:]
	}
	return names, done, true
}

// formulas is parse where formula files must be named.
func (c *command) formulas(flags *flag.FlagSet, args []string) (names []string, status int, ok bool) {
	names, status, ok = c.parse(flags, args)
	if ok && len(names) == 0 {
		return nil, c.usage("", "no formula is named", "name formula files, or - for standard input"), false
	}
	return names, status, ok
}

// asksJSON reports whether an argument is the option that asks for JSON: what is
// wrong before the options are read is then said in JSON, too.
func asksJSON(arg string) bool {
	name := strings.TrimLeft(arg, "-")
	return name == "json" || name == "json=true"
}

func (c *command) badFlag(flags *flag.FlagSet, err error) int {
	var known []string
	flags.VisitAll(func(f *flag.Flag) { known = append(known, "-"+f.Name) })
	text := err.Error()
	if name, found := strings.CutPrefix(text, "flag provided but not defined: "); found {
		remedy := nearest.Remedy(name, known)
		if remedy == "" {
			remedy = "see lyewright help " + flags.Name()
		}
		return c.usage(name, "is not an option of "+flags.Name(), remedy)
	}
	if name, found := strings.CutPrefix(text, "flag needs an argument: "); found {
		return c.usage(name, "needs a value behind it", "see lyewright help "+flags.Name())
	}
	if name, found := strings.CutPrefix(text, "bad flag syntax: "); found {
		return c.usage(name, "is not an option", "see lyewright help "+flags.Name())
	}
	return c.usage("", text, "see lyewright help "+flags.Name())
}
