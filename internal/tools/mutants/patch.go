package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// A patch is a wrong program as a person wrote it: a few header lines, then a unified
// diff.
type patch struct {
	name  string
	tests []string // packages to test, in order, as "./soap"
	first first    // a test that is run before the others; may be empty
	hunks []hunk
}

// A first is a test that has noticed the mistake before: it is asked before all others, so
// that a run is quick. What it lets pass the others are asked about.
type first struct{ dir, test string }

// A hunk puts lines in place of others in one file. Where it stands is told by what it
// takes away and the lines around that, not by line numbers.
type hunk struct {
	file     string // below the root, as "soap/solve.go"
	old, new []string
}

// readPatches reads every patch of a directory, in order of name.
func readPatches(dir string) ([]patch, error) {
	paths, err := filepath.Glob(filepath.Join(dir, "*.patch"))
	if err != nil {
		return nil, err
	}
	if len(paths) == 0 {
		return nil, fmt.Errorf("%s holds no patch", dir)
	}
	var patches []patch
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		p, err := parsePatch(strings.TrimSuffix(filepath.Base(path), ".patch"), string(text))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
		patches = append(patches, p)
	}
	return patches, nil
}

// parsePatch reads a patch. The header must say what the mistake would do ("Maker: …"),
// which sentence it breaks ("Breaks: …") and what is to be tested ("Test: ./units ./soap"),
// and may say which test to ask first ("First: ./soap TestAPartHasItsShare").
func parsePatch(name, text string) (patch, error) {
	p := patch{name: name}
	header, diff, found := strings.Cut(text, "\n--- ")
	if !found {
		return p, fmt.Errorf("holds no diff")
	}
	var maker, breaks bool
	for line := range strings.Lines(header) {
		key, value, _ := strings.Cut(line, ":")
		value = strings.TrimSpace(value)
		switch key {
		case "Maker":
			maker = value != ""
		case "Breaks":
			breaks = value != ""
		case "Test":
			p.tests = strings.Fields(value)
		case "First":
			p.first.dir, p.first.test, _ = strings.Cut(value, " ")
		}
	}
	if !maker || !breaks || len(p.tests) == 0 {
		return p, fmt.Errorf("its header lacks one of Maker, Breaks and Test")
	}
	if p.first.dir != "" && (!slices.Contains(p.tests, p.first.dir) || p.first.test == "") {
		return p, fmt.Errorf("%s %s, to be asked first, is no test of what is tested", p.first.dir, p.first.test)
	}
	file := ""
	for line := range strings.SplitSeq(strings.TrimSuffix("--- "+diff, "\n"), "\n") {
		var h *hunk
		if n := len(p.hunks); n > 0 {
			h = &p.hunks[n-1]
		}
		switch {
		case strings.HasPrefix(line, "--- a/"):
		case strings.HasPrefix(line, "+++ b/"):
			file = strings.TrimPrefix(line, "+++ b/")
		case strings.HasPrefix(line, "@@"):
			p.hunks = append(p.hunks, hunk{file: file})
		case h == nil:
			return p, fmt.Errorf("%q stands before any hunk", line)
		case strings.HasPrefix(line, "-"):
			h.old = append(h.old, line[1:])
		case strings.HasPrefix(line, "+"):
			h.new = append(h.new, line[1:])
		case strings.HasPrefix(line, " "):
			h.old, h.new = append(h.old, line[1:]), append(h.new, line[1:])
		default:
			return p, fmt.Errorf("%q is no line of a diff", line)
		}
	}
	for _, h := range p.hunks {
		if h.file == "" || len(h.old) == 0 {
			return p, fmt.Errorf("a hunk takes nothing away and has nothing around it, so nobody can tell where it stands")
		}
	}
	return p, nil
}

// apply gives the files that the patch changes, as it leaves them. read gives a file of
// the program.
func (p *patch) apply(read func(file string) (string, error)) (map[string]string, error) {
	changed := map[string]string{}
	for _, h := range p.hunks {
		text, ok := changed[h.file]
		if !ok {
			var err error
			if text, err = read(h.file); err != nil {
				return nil, err
			}
		}
		lines := strings.Split(text, "\n")
		at := places(lines, h.old)
		if len(at) != 1 {
			return nil, fmt.Errorf("%s: %q fits in %d places, not in one", h.file, strings.Join(h.old, "\n"), len(at))
		}
		lines = slices.Concat(lines[:at[0]], h.new, lines[at[0]+len(h.old):])
		changed[h.file] = strings.Join(lines, "\n")
	}
	return changed, nil
}

// places finds where some lines stand among others.
func places(lines, wanted []string) []int {
	var at []int
	for i := 0; i+len(wanted) <= len(lines); i++ {
		if slices.Equal(lines[i:i+len(wanted)], wanted) {
			at = append(at, i)
		}
	}
	return at
}
