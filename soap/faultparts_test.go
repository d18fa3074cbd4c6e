package soap_test

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// saysWhatIs are the words that a reason begins with: it says what the text is, has or lacks. A
// remedy tells the maker what to do, and so begins otherwise.
var saysWhatIs = regexp.MustCompile(`^(may mean|is|are|has|lacks|stands|does|ends|takes|holds|asks|makes|mix|leaves|leave|leads|take|of|bring|brings|names|\(small|\"[^\"]*\" is)\b`)

// Every fault of every wrong formula says what stands there, what is wrong with it and what
// would be right, each in its place.
func TestAFaultsTextReasonAndRemedyAreWhatTheyAreCalled(t *testing.T) {
	files, err := filepath.Glob("../testdata/formulas/wrong/*.json")
	if err != nil || len(files) < 50 {
		t.Fatal(files, err)
	}
	seen := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		f, _, err := soap.ParseFormula(text)
		if err == nil {
			_, err = f.Batch()
		}
		var faults soap.Faults
		if !errors.As(err, &faults) {
			continue // what only a view of the batch refuses
		}
		for _, fault := range faults {
			seen++
			if !saysWhatIs.MatchString(fault.Reason) {
				t.Errorf("%s: %s: the reason is %q", filepath.Base(file), fault.Path, fault.Reason)
			}
			if strings.HasPrefix(fault.Remedy, "is ") || strings.HasPrefix(fault.Remedy, "has ") ||
				strings.HasPrefix(fault.Remedy, "stands ") {
				t.Errorf("%s: %s: the remedy is %q", filepath.Base(file), fault.Path, fault.Remedy)
			}
			if saysWhatIs.MatchString(fault.Text) && strings.Contains(fault.Text, " ") {
				t.Errorf("%s: %s: the text is %q", filepath.Base(file), fault.Path, fault.Text)
			}
		}
	}
	if seen < 150 {
		t.Errorf("%d faults were looked at: not all", seen)
	}
}
