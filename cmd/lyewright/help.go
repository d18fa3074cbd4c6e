package main

import (
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"runtime/debug"
	"strings"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/nearest"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/schema"
)

//go:embed help.txt
var helpText string

// help prints a section of the help text.
func (c *command) help(args []string) int {
	topic := "lyewright"
	if len(args) > 0 {
		topic = args[0]
	}
	if topic == "schema" && len(args) > 1 {
		return c.schema(args[1:])
	}
	text, topics := section(topic)
	if text != "" {
		return c.print([]byte(text), done)
	}
	remedy := nearest.Remedy(topic, topics)
	if remedy == "" {
		remedy = "there is help on " + strings.Join(topics, ", ")
	}
	return c.usage(topic, "is not a topic of the help", remedy)
}

// schema prints a schema itself, ready for a file.
func (c *command) schema(names []string) int {
	if len(names) > 1 {
		return c.usage(names[1], "is more than one schema", "print them one by one")
	}
	text, err := schema.Of(names[0])
	if err != nil {
		var fault soap.Fault
		errors.As(err, &fault)
		return c.fail(wrongInput, fault)
	}
	return c.print(text, done)
}

// section gives a section of the help text; they are parted by lines "== name".
// Where there is none of that name, it gives the names that there are.
func section(topic string) (text string, topics []string) {
	for part := range strings.SplitSeq(helpText, "== ") {
		name, text, found := strings.Cut(part, "\n")
		if found && name == topic {
			return text, nil
		}
		if found {
			topics = append(topics, name)
		}
	}
	return "", topics
}

func (c *command) version(args []string) int {
	names, status, ok := c.parse(flag.NewFlagSet("version", flag.ContinueOnError), args)
	if !ok {
		return status
	}
	if len(names) > 0 {
		return c.usage(names[0], "is more than version needs", "leave it out")
	}
	version := "(devel)"
	if info, found := debug.ReadBuildInfo(); found && info.Main.Version != "" {
		version = info.Main.Version
	}
	return c.print(fmt.Appendf(nil, "lyewright %s, fragrance limits of IFRA amendment %d, data edition %s\n", version, fragrance.Amendment(), soap.DataEdition()), done)
}
