package soap_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var (
	fuzzTarget = regexp.MustCompile(`(?m)^func (Fuzz\w+)\(`)
	seedName   = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)+$`)
	foundName  = regexp.MustCompile(`^[0-9a-f]{16}$`) // as the fuzzer names what it finds
)

// A reader's fuzz target has seeds beside it that say by their names why they are there.
func TestEveryFuzzTargetHasSeedsThatSayWhy(t *testing.T) {
	targets, seeds := 0, 0
	err := filepath.WalkDir("..", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		for _, match := range fuzzTarget.FindAllStringSubmatch(string(text), -1) {
			targets++
			dir := filepath.Join(filepath.Dir(path), "testdata", "fuzz", match[1])
			entries, err := os.ReadDir(dir)
			if err != nil || len(entries) < 5 {
				t.Errorf("%s in %s has %d seeds in %s: %v", match[1], path, len(entries), dir, err)
			}
			seeds += len(entries)
			for _, entry := range entries {
				if name := entry.Name(); !seedName.MatchString(name) || foundName.MatchString(name) {
					t.Errorf("%s/%s: name a seed after the reason it is there, as in exponent-is-no-number", dir, name)
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	// The checks run each for a while: a new reader may join an old one's target.
	if targets < 20 || targets > 26 || seeds < 200 {
		t.Errorf("%d targets, %d seeds", targets, seeds)
	}
}
