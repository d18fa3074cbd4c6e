package names

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Fold writes a name so that spellings of one name are equal: in lower case, without
// accents and apostrophes, with one space for each hyphen and each run of spaces, and
// none at either end. A name that is folded already comes back as it is.
func Fold(name string) string {
	if folded(name) {
		return name
	}
	var b strings.Builder
	b.Grow(len(name))
	space := false
	for _, r := range name {
		if isSpace(r) {
			space = b.Len() > 0
			continue
		}
		if silent(r) {
			continue
		}
		if space {
			b.WriteByte(' ')
			space = false
		}
		if r < utf8.RuneSelf {
			if 'A' <= r && r <= 'Z' {
				r += 'a' - 'A'
			}
			b.WriteByte(byte(r))
			continue
		}
		switch r = plain(unicode.ToLower(r)); r {
		case 'ß':
			b.WriteString("ss")
		case 'æ':
			b.WriteString("ae")
		case 'œ':
			b.WriteString("oe")
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// folded reports whether a name has nothing to fold.
func folded(name string) bool {
	last := byte(' ')
	for i := range len(name) {
		switch c := name[i]; {
		case c >= utf8.RuneSelf, 'A' <= c && c <= 'Z', c == '-', c == '\'', c == '`', c < ' ', c == ' ' && last == ' ':
			return false
		default:
			last = c
		}
	}
	return name == "" || last != ' '
}

// isSpace reports whether a letter parts words: a space, or a hyphen or dash, of any kind. A line break or a
// tab is none: no name has one.
func isSpace(r rune) bool {
	if r < utf8.RuneSelf {
		return r == ' ' || r == '-'
	}
	return unicode.Is(unicode.Zs, r) || unicode.Is(unicode.Pd, r) || r == '−'
}

// silent reports whether a letter does not count: an apostrophe, or an accent by itself.
func silent(r rune) bool {
	if r < utf8.RuneSelf {
		return r == '\'' || r == '`'
	}
	return strings.ContainsRune("’‘ʼ´", r) || unicode.Is(unicode.Mn, r)
}

// plain gives a lower-case Latin letter without its accent.
func plain(r rune) rune {
	switch r {
	case 'à', 'á', 'â', 'ã', 'ä', 'å', 'ā', 'ă', 'ą', 'ǎ':
		return 'a'
	case 'ç', 'ć', 'ĉ', 'ċ', 'č':
		return 'c'
	case 'ď', 'đ':
		return 'd'
	case 'è', 'é', 'ê', 'ë', 'ē', 'ĕ', 'ė', 'ę', 'ě':
		return 'e'
	case 'ĝ', 'ğ', 'ġ', 'ģ':
		return 'g'
	case 'ĥ', 'ħ':
		return 'h'
	case 'ì', 'í', 'î', 'ï', 'ĩ', 'ī', 'ĭ', 'į', 'ı':
		return 'i'
	case 'ĵ':
		return 'j'
	case 'ķ':
		return 'k'
	case 'ĺ', 'ļ', 'ľ', 'ł':
		return 'l'
	case 'ñ', 'ń', 'ņ', 'ň':
		return 'n'
	case 'ò', 'ó', 'ô', 'õ', 'ö', 'ø', 'ō', 'ŏ', 'ő':
		return 'o'
	case 'ŕ', 'ŗ', 'ř':
		return 'r'
	case 'ś', 'ŝ', 'ş', 'š', 'ș':
		return 's'
	case 'ţ', 'ť', 'ț':
		return 't'
	case 'ù', 'ú', 'û', 'ü', 'ũ', 'ū', 'ŭ', 'ů', 'ű', 'ų':
		return 'u'
	case 'ŵ':
		return 'w'
	case 'ý', 'ÿ', 'ŷ':
		return 'y'
	case 'ź', 'ż', 'ž':
		return 'z'
	default:
		return r
	}
}

// endings are the words that say no more of a name than that it is an oil, in the order in
// which they are left out. No others ever are: wax, butter, kernel, fractionated, hydrogenated, flakes, hydrous,
// pomace, leaf and absolute change what a name means.
var endings = [...]string{" oil", " fat", " seed oil", " essential oil", " eo"}

// spellings yields a folded name as it is written, then without each of the endings that it has.
func spellings(folded string) func(yield func(string) bool) {
	return func(yield func(string) bool) {
		if !yield(folded) {
			return
		}
		for _, ending := range endings {
			if shorter, has := strings.CutSuffix(folded, ending); has && shorter != "" && !yield(shorter) {
				return
			}
		}
	}
}
