package sheet_test

import (
	"strings"
	"testing"

	"example.com/lyewright/colour"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/soap/sheet"
)

// Whoever asks for a row by an everyday name is told what it was read as.
func TestARowSaysWhatItWasAskedForAs(t *testing.T) {
	bark, err := fragrance.LookUp("Cinnamon Bark Oil")
	if err != nil {
		t.Fatal(err)
	}
	charcoal, err := colour.LookUp("Aktivkohle")
	if err != nil {
		t.Fatal(err)
	}
	var page strings.Builder
	if err := sheet.WriteFragrance(&page, bark); err != nil {
		t.Fatal(err)
	}
	if err := sheet.WriteColourant(&page, charcoal); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		`The name "Cinnamon Bark Oil" is read as cinnamon-bark.`,
		`The name "Aktivkohle" is read as activated-charcoal.`,
	} {
		if !strings.Contains(page.String(), want) {
			t.Errorf("no %q", want)
		}
	}
}
