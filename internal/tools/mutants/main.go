// Mutants tests the tests: it makes wrong programs out of the right one and asks whether
// a test notices. The checkout is never touched.
//
//	go -C internal/tools run ./mutants written
//
// tries every wrong program that stands as a patch under testdata/mutants. Each must make
// a test fail, without golden files and without examples: that is the promise, and
// .ci/run holds it.
//
//	go -C internal/tools run ./mutants generated
//
// makes wrong programs by rule, tries a sample of them and writes down those that nothing
// noticed. It is run by hand.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"regexp"
	"time"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// options are what the command line says.
type options struct {
	root    string
	workers int
	only    *regexp.Regexp
	timeout time.Duration
	seed    uint64
	sample  int
	report  string
	log     string
}

// run runs the command: 0 where no mutant lived, 1 where one did or could not be tried,
// 2 where the usage is wrong.
func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("mutants", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() {
		_, _ = fmt.Fprintln(stderr, "usage: mutants [options] written | generated")
		flags.PrintDefaults()
	}
	var o options
	flags.StringVar(&o.root, "root", "../..", "the checkout")
	flags.IntVar(&o.workers, "workers", 2, "how many are tried at a time")
	only := flags.String("only", "", "try only those whose name this regular expression matches")
	flags.DurationVar(&o.timeout, "timeout", 2*time.Minute, "for the tests of one package")
	flags.Uint64Var(&o.seed, "seed", 1, "of the sample (generated)")
	flags.IntVar(&o.sample, "sample", 300, "how many are tried (generated)")
	flags.StringVar(&o.log, "log", "", "a file of outcomes: what was noticed there is not tried again, what is tried is added (generated)")
	flags.StringVar(&o.report, "report", "testdata/mutants/generated.txt", "the report below the root, whose reasons are kept (generated)")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() != 1 || o.workers < 1 || o.sample < 1 {
		flags.Usage()
		return 2
	}
	var err error
	if o.only, err = regexp.Compile(*only); err != nil {
		_, _ = fmt.Fprintln(stderr, err)
		return 2
	}
	var ok bool
	switch flags.Arg(0) {
	case "written":
		ok, err = written(&o, stdout)
	case "generated":
		ok, err = generated(&o, stdout)
	default:
		flags.Usage()
		return 2
	}
	if err != nil {
		_, _ = fmt.Fprintln(stderr, err)
	}
	if err != nil || !ok {
		return 1
	}
	return 0
}
