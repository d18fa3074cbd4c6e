package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.com/lyewright/internal/madeup"
	"example.com/lyewright/soap"
	"example.com/lyewright/soap/sheet"
	"example.com/lyewright/units"
)

// What the command prints of a file is what the library gives of the formula: no
// arithmetic, no figure more or less, in every view.
func TestTheCommandPrintsWhatTheLibraryGives(t *testing.T) {
	madeup.Each(t, madeup.New(601).Any, 120, func(t *testing.T, f soap.Formula, b soap.Batch) {
		text := string(madeup.Text(f))
		status := done
		if len(b.Findings) > 0 && b.Findings[0].Severity == soap.Danger {
			status = dangerous
		}
		said := func(want string, args ...string) {
			if got, errs, exit := lyewright(text, args...); got != want || errs != "" || exit != status {
				t.Errorf("%v: exit %d, %q and %q, want %q\n%s", args, exit, got, errs, want, text)
			}
		}
		tinted, err := b.Tint()
		if err != nil {
			t.Fatal(err)
		}
		for view, what := range map[string]json.Marshaler{"batch": b, "cap": b.Caps(), "tint": tinted} {
			object, err := what.MarshalJSON()
			if err != nil {
				t.Fatal(err)
			}
			said(string(object)+"\n", view, "-json", "-")
		}
		for _, unit := range []units.Unit{units.Gram, units.Ounce} {
			var page, caps, tint bytes.Buffer
			if sheet.Write(&page, b, unit) != nil || sheet.WriteCaps(&caps, b, unit) != nil || sheet.WriteTint(&tint, b, unit) != nil {
				t.Fatal("a sheet cannot be written")
			}
			said(page.String(), "batch", "-units", unit.String(), "-")
			said(caps.String(), "cap", "-units", unit.String(), "-")
			said(tint.String(), "tint", "-units", unit.String(), "-")
		}
		lines, _, exit := lyewright(text, "check", "-")
		if strings.Count(lines, "\n") != len(b.Findings) || exit != status {
			t.Errorf("check: exit %d, %d lines for %d findings", exit, strings.Count(lines, "\n"), len(b.Findings))
		}
		for i, line := range strings.Split(strings.TrimSuffix(lines, "\n"), "\n") {
			if i < len(b.Findings) && !strings.Contains(line, fmt.Sprintf(": %s %s %s: %s", b.Findings[i].Severity, b.Findings[i].Code, b.Findings[i].Subject, b.Findings[i].Message())) {
				t.Errorf("check says %q of %s", line, b.Findings[i].Code)
			}
		}
	})
}

// Many at a time, in a stream, give what they give one by one.
func TestAStreamOfMadeUpFormulasIsAnsweredAsEachAlone(t *testing.T) {
	var input, want strings.Builder
	m, status := madeup.New(602), done
	for i := range 300 {
		text := string(madeup.Text(m.Any()))
		fmt.Fprintln(&input, text)
		alone, errs, exit := lyewright(text, "batch", "-json", "-")
		if errs != "" { // alone, what is wrong is said on standard error
			alone = strings.Replace(errs, `,"file":"-"`, "", 1)
		}
		status = max(status, exit)
		fmt.Fprintf(&want, "%s,\"input_line\":%d}\n", strings.TrimSuffix(alone, "}\n"), i+1)
	}
	got, errs, exit := lyewright(input.String(), "batch", "-json", "-")
	if errs != "" || exit != status {
		t.Errorf("exit %d, want %d, %q", exit, status, errs)
	}
	gotLines, wantLines := strings.Split(got, "\n"), strings.Split(want.String(), "\n")
	for i := range max(len(gotLines), len(wantLines)) {
		if i >= len(gotLines) || i >= len(wantLines) || gotLines[i] != wantLines[i] {
			t.Fatalf("line %d is %.300q, want %.300q", i+1, gotLines[min(i, len(gotLines)-1)], wantLines[min(i, len(wantLines)-1)])
		}
	}
}
