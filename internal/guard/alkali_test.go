package guard_test

import (
	"go/types"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// What is weighed of an alkali is the stock lye where there is one, and then the dry alkali
// is 0 g on the scale: a program that prints that weighs no lye at all. So there is no
// Weigh on an alkali itself, and no code that is shown reads past ToWeigh.
func TestNoAlkaliIsWeighedPastItsStock(t *testing.T) {
	soap := load(t, []string{module + "/soap"})[module+"/soap"]
	alkali := soap.Scope().Lookup("AlkaliWeighing").Type()
	if at, _, _ := types.LookupFieldOrMethod(alkali, true, soap, "Weigh"); at != nil {
		t.Errorf("%v: of a stock lye it is 0 g, or not what stands in the jug", at)
	}
	if at, _, _ := types.LookupFieldOrMethod(alkali, true, soap, "ToWeigh"); at == nil {
		t.Error("AlkaliWeighing has no ToWeigh")
	}
	for text, wrong := range map[string]bool{
		"fmt.Println(alkali.Weigh)": true, "a.Dry.Weigh.String()": true, "Alkalis[0].Weigh": true,
		"Alkalis[i].Weighing": true,
		"w, _ := a.ToWeigh()": false, "weighing.Weigh": false, "oil.Weigh": false, "a.Dry.Mass": false,
	} {
		if pastStock.MatchString(text) != wrong {
			t.Errorf("%s counts as wrong: %t", text, !wrong)
		}
	}
	shown := 0
	err := filepath.WalkDir("../..", func(path string, entry fs.DirEntry, err error) error {
		name := entry.Name()
		code := strings.HasPrefix(name, "example") && strings.HasSuffix(name, "_test.go") || name == "doc.go" ||
			strings.HasSuffix(name, ".md") || strings.Contains(path, "importer") && strings.HasSuffix(name, ".go")
		if err != nil || entry.IsDir() || !code {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		shown++
		if bad := pastStock.Find(text); bad != nil {
			t.Errorf("%s shows %s: print what ToWeigh gives", path, bad)
		}
		return nil
	})
	if err != nil || shown < 60 {
		t.Fatalf("%d files with code that is shown, %v", shown, err)
	}
}

var pastStock = regexp.MustCompile(`\b(alkali|Alkalis\[\w+\])\.Weigh(ing)?\b|\.Dry\.Weigh\b`)
