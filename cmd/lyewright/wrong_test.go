package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Each wrong formula stands beside the text that standard error must have, with
// the file's base name in place of its path.
func TestEachWrongFormulaIsRefusedWithItsMessagesAndNothingElse(t *testing.T) {
	for _, path := range names(t, formulas+"/wrong/*.json") {
		t.Run(filepath.Base(path), func(t *testing.T) {
			stdout, stderr, status := lyewright("", "batch", path)
			if status != wrongInput || stdout != "" {
				t.Errorf("exit %d with %d bytes on standard output, want exit 2 and none", status, len(stdout))
			}
			matchGolden(t, strings.TrimSuffix(path, "json")+"txt", strings.ReplaceAll(stderr, path, filepath.Base(path)))
		})
	}
}

func TestNoMessageStandsWithoutItsWrongFormula(t *testing.T) {
	for _, path := range names(t, formulas+"/wrong/*.txt") {
		if _, err := os.Stat(strings.TrimSuffix(path, "txt") + "json"); err != nil {
			t.Error(err)
		}
	}
}

func TestWithJSONAWrongFormulaIsOneErrorObjectOnStandardError(t *testing.T) {
	for _, path := range names(t, formulas+"/wrong/*.json") {
		stdout, stderr, status := lyewright("", "batch", path, "-json")
		if status != wrongInput || stdout != "" {
			t.Errorf("%s: exit %d, standard output %q", path, status, stdout)
		}
		var object struct {
			Schema string
			Errors []map[string]any
		}
		if err := json.Unmarshal([]byte(stderr), &object); err != nil || object.Schema != "error/1" || len(object.Errors) == 0 {
			t.Errorf("%s: %v in %s", path, err, stderr)
			continue
		}
		for _, fault := range object.Errors {
			for _, key := range []string{"path", "text", "reason", "remedy", "line", "column"} {
				if _, there := fault[key]; !there {
					t.Errorf("%s: %v has no %q", path, fault, key)
				}
			}
		}
	}
}

func TestInputBeyondTheLimitsIsRefused(t *testing.T) {
	oils := strings.Repeat(`{"oil":"olive","share":"1 %"},`, 101)
	parts := strings.Repeat(`{"part":"p","share":"1 %"},`, 51)
	additives := strings.Repeat(`{"additive":"a","load":"1 g"},`, 51)
	for name, text := range map[string]string{
		"is larger than 1 MiB":                `{"formula":"` + strings.Repeat("x", 1<<20) + `"}`,
		"has more than 100 oils":              `{"oils":[` + strings.TrimSuffix(oils, ",") + `]}`,
		"has more than 50 parts":              `{"parts":[` + strings.TrimSuffix(parts, ",") + `]}`,
		"has more than 50 additives":          `{"parts":[{"additives":[` + strings.TrimSuffix(additives, ",") + `]}]}`,
		"has too many digits":                 `{"size":{"oils":"` + strings.Repeat("1", 17) + ` g"}}`,
		"is nested too deeply":                strings.Repeat(`{"a":`, 17),
		"has more than 200 keys":              `{` + strings.TrimSuffix(manyKeys(201), ",") + `}`,
		"is too long for a quantity":          `{"size":{"oils":"` + strings.Repeat("9", 1<<19) + ` g"}}`,
		"has more than 500 items":             `{"oils":[` + strings.Repeat(`{},`, 500) + `{}]}`,
		"has a key of 201 bytes":              `{"` + strings.Repeat("k", 201) + `":1}`,
		"is empty; write a formula":           "\n \n",
		"has half of a surrogate pair":        `{"formula":"\ud800"}`,
		"begins with a byte order mark; save": "\uFEFF{}",
	} {
		stdout, stderr, status := lyewright(text, "batch", "-")
		if status != wrongInput || stdout != "" || !strings.Contains(stderr, name) {
			t.Errorf("%s: exit %d, %.200q", name, status, stderr)
		}
		if len(stderr) > 100_000 {
			t.Errorf("%s: %d bytes of messages", name, len(stderr))
		}
	}
}

func manyKeys(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, `"k%d":1,`, i)
	}
	return b.String()
}

func TestADirectoryIsWrongUsageAndAMissingFileCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	none := dir + "/none.json"
	if stdout, stderr, status := lyewright("", "batch", dir); status != wrongInput || stdout != "" || !strings.Contains(stderr, "is a directory") {
		t.Errorf("batch of a directory: exit %d, %q, %q", status, stdout, stderr)
	}
	if stdout, stderr, status := lyewright("", "batch", none); status != cannotIO || stdout != "" || !strings.Contains(stderr, "cannot be read") {
		t.Errorf("batch of a missing file: exit %d, %q, %q", status, stdout, stderr)
	}
	// a check prints every fault on standard output, so that a log keeps it
	if stdout, stderr, status := lyewright("", "check", dir); status != wrongInput || stderr != "" || !strings.HasPrefix(stdout, dir+":1:1: error wrong-form file: is a directory") {
		t.Errorf("check of a directory: exit %d, %q, %q", status, stdout, stderr)
	}
	if stdout, stderr, status := lyewright("", "check", none); status != cannotIO || stderr != "" || !strings.HasPrefix(stdout, none+":1:1: error unreadable file: cannot be read") {
		t.Errorf("check of a missing file: exit %d, %q, %q", status, stdout, stderr)
	}
}

func TestAResultThatCannotBeWrittenIsExit3(t *testing.T) {
	lantern := formulas + "/lantern-walk.json"
	line := strings.ReplaceAll(readFile(t, lantern), "\n", " ")
	for _, args := range [][]string{
		{"batch", lantern},
		{"batch", "-json", lantern, lantern},
		{"batch", "-json", "-lines", "-"},
		{"check", lantern},
		{"oils"},
		{"version"},
		{"help"},
	} {
		var stderr strings.Builder
		if status := run(args, strings.NewReader(line), fails{}, &stderr); status != cannotIO || !strings.Contains(stderr.String(), "no space left") {
			t.Errorf("%v: exit %d, %q", args, status, stderr.String())
		}
	}
	if status := run([]string{"bacth"}, strings.NewReader(""), fails{}, fails{}); status != cannotIO {
		t.Errorf("with neither stream: exit %d", status)
	}
}
