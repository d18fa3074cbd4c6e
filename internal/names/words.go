package names

import (
	"strings"
	"unicode"
)

// Words splits a name into its words, each folded: runs of letters or of digits, whatever else stands between them.
// An apostrophe parts words, too, which it does not where a name is folded before.
func Words(name string) []string {
	var apart strings.Builder
	apart.Grow(len(name) + 8)
	digits := false
	for _, r := range name {
		if unicode.IsDigit(r) != digits {
			digits = !digits
			apart.WriteByte(' ')
		}
		if !digits && !unicode.IsLetter(r) && !unicode.Is(unicode.Mn, r) {
			r = ' '
		}
		apart.WriteRune(r)
	}
	return strings.Fields(Fold(apart.String()))
}
