package main

import (
	"strings"
	"testing"
)

// What could harm a person stands in every view of a formula, and in its exit status.
func TestEveryViewSaysADanger(t *testing.T) {
	metal := formulaWith("parts", `[{"part": "whole", "share": "100 %", "additives": [{"additive": "zinc dust", "load": "5 g"}]}]`)
	for command, says := range map[string]string{
		"batch -":       "DANGER  zinc dust (zinc): in lye and fresh batter this metal gives off hydrogen",
		"batch -json -": `"code":"hydrogen","severity":"danger","subject":"parts[0].additives[0]"`,
		"cap -":         "DANGER  zinc dust (zinc): in lye and fresh batter this metal gives off hydrogen",
		"cap -json -":   `"code":"hydrogen","severity":"danger"`,
		"tint -":        "DANGER  zinc dust (zinc): in lye and fresh batter this metal gives off hydrogen",
		"tint -json -":  `"code":"hydrogen","severity":"danger"`,
		"check -": "danger hydrogen parts[0].additives[0]: zinc dust (zinc): in lye and fresh batter this metal " +
			"gives off hydrogen",
	} {
		stdout, stderr, status := lyewright(metal, strings.Fields(command)...)
		if text := strings.Join(strings.Fields(stdout), " "); !strings.Contains(text, strings.Join(strings.Fields(says),
			" ")) || stderr != "" || status != dangerous {
			t.Errorf("%s: exit %d, %q\n%s", command, status, stderr, stdout)
		}
	}
	salt := strings.Replace(metal, "zinc dust", "zinc oxide", 1)
	for _, command := range []string{"batch -", "batch -json -", "cap -", "tint -json -", "check -"} {
		if stdout, _, status := lyewright(salt, strings.Fields(command)...); status != done ||
			strings.Contains(stdout, "hydrogen") {
			t.Errorf("%s of zinc oxide: exit %d\n%s", command, status, stdout)
		}
	}
}
