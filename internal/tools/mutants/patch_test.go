package main

import (
	"errors"
	"strings"
	"testing"
)

const plainPatch = `Maker: weighs too much
Breaks: "a line"
Test: ./scale ./soap
First: ./soap TestTheScale

--- a/scale/scale.go
+++ b/scale/scale.go
@@ -1,2 +1,2 @@
 one
-two
+three
`

func files(of map[string]string) func(string) (string, error) {
	return func(file string) (string, error) {
		if text, ok := of[file]; ok {
			return text, nil
		}
		return "", errors.New("no such file")
	}
}

func TestAPatchChangesTheOnePlaceThatItFits(t *testing.T) {
	p, err := parsePatch("plain", plainPatch)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.tests) != 2 || p.tests[0] != "./scale" || p.first != (first{"./soap", "TestTheScale"}) {
		t.Errorf("%+v", p)
	}
	// The line has moved, and what stands around it is new.
	got, err := p.apply(files(map[string]string{"scale/scale.go": "zero\ntwo\none\ntwo\nfour\n"}))
	if want := "zero\ntwo\none\nthree\nfour\n"; err != nil || got["scale/scale.go"] != want {
		t.Errorf("%q, %v, want %q", got, err, want)
	}
}

func TestAPatchThatFitsNowhereOrTwiceDoesNotApply(t *testing.T) {
	p, err := parsePatch("plain", plainPatch)
	if err != nil {
		t.Fatal(err)
	}
	for text, says := range map[string]string{
		"one\nthree\n":               "0 places",
		"one\ntwo\nfour\none\ntwo\n": "2 places",
	} {
		if _, err := p.apply(files(map[string]string{"scale/scale.go": text})); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", text, err)
		}
	}
	if _, err := p.apply(files(nil)); err == nil {
		t.Error("a patch of a file that is not there applies")
	}
}

func TestAPatchMustSayWhatItIsAbout(t *testing.T) {
	for name, text := range map[string]string{
		"no header":       "\n--- a/x.go\n+++ b/x.go\n@@ -1 +1 @@\n-a\n+b\n",
		"no maker":        strings.Replace(plainPatch, "Maker: weighs too much", "Maker:", 1),
		"no test":         strings.Replace(plainPatch, "Test:", "Tests:", 1),
		"no diff":         "Maker: a\nBreaks: b\nTest: ./c\n",
		"an odd line":     plainPatch + "?\n",
		"nothing around":  strings.NewReplacer(" one\n", "", "-two\n", "").Replace(plainPatch),
		"first elsewhere": strings.Replace(plainPatch, "./soap Test", "./colour Test", 1),
	} {
		if _, err := parsePatch(name, text); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}
