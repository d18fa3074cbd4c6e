package nearest_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/lyewright/internal/nearest"
	"github.com/google/go-cmp/cmp"
)

var oils = []string{
	"almond", "castor", "cocoa-butter", "coconut", "jojoba", "lard", "lauric-acid", "olive", "palm", "palm-kernel", "palm-olein",
	"palm-stearin", "peanut", "safflower", "safflower-high-oleic", "shea-butter", "sunflower", "sunflower-high-oleic", "sunflower-mid-oleic",
}

func TestMistypedNameOffersTheOneThatWasMeantFirst(t *testing.T) {
	tests := []struct{ name, meant string }{
		{"oliv", "olive"},   // a letter dropped
		{"olivve", "olive"}, // added
		{"olize", "olive"},  // changed
		{"oilve", "olive"},  // swapped
		{"OLIVE", "olive"},  // in capitals
		{"cocnut", "coconut"},
		{"suflower-high-oleic", "sunflower-high-oleic"},
		{"sunflower high oleic", "sunflower-high-oleic"},
		{"shea", "shea-butter"}, // a whole word of it
		{"olive oil", "olive"},  // a word too many
	}
	for _, test := range tests {
		got := nearest.Names(test.name, oils)
		if len(got) == 0 || got[0] != test.meant {
			t.Errorf("%q offers %q, want %q first", test.name, got, test.meant)
		}
	}
}

func TestWholeWordIsFoundWhateverItsCase(t *testing.T) {
	for _, name := range []string{"oleic", "OLEIC"} {
		if got := nearest.Names(name, []string{"Sunflower high-Oleic oil"}); len(got) != 1 {
			t.Errorf("%q offers %q", name, got)
		}
	}
}

func TestUnrelatedNameOffersNothing(t *testing.T) {
	for _, name := range []string{"", "xylophone", "q", "beef dripping", "liv", strings.Repeat("olive-", 11)} {
		if got := nearest.Names(name, oils); got != nil {
			t.Errorf("%q offers %q", name, got)
		}
		if got := nearest.Remedy(name, oils); got != "" {
			t.Errorf("%q: %s", name, got)
		}
	}
	if got := nearest.Names("olive", nil); got != nil {
		t.Errorf("nothing known offers %q", got)
	}
}

func TestNearIsWithinAThirdOfTheLetters(t *testing.T) {
	tests := []struct {
		name, known string
		near        bool
	}{
		{"abcdef", "abcdxy", true}, // two of six
		{"abcdef", "abcxyz", false},
		{"abcde", "abcdx", true}, // one of five
		{"abcde", "abcxy", false},
		{"abcdef", "abdcfe", true},  // two swaps
		{"abcdef", "badcfe", false}, // three
		{"ab", "ax", true},          // one change is always near
		{"ab", "xy", false},
		{"abcdef", "abcdefgh", true}, // two added
		{"abcdef", "abcdefghi", false},
	}
	for _, test := range tests {
		if got := nearest.Names(test.name, []string{test.known}); (len(got) == 1) != test.near {
			t.Errorf("%q near %q is %t", test.name, test.known, !test.near)
		}
	}
}

func TestOneSlipIsAlwaysNear(t *testing.T) {
	source := rand.New(rand.NewPCG(50, 2026))
	for range 5_000 {
		known := oils[source.IntN(len(oils))]
		typed := []byte(known)
		at := source.IntN(len(typed) - 1)
		switch source.IntN(4) {
		case 0:
			typed = slices.Delete(typed, at, at+1)
		case 1:
			typed = slices.Insert(typed, at, 'z')
		case 2:
			typed[at] = 'z'
		default:
			typed[at], typed[at+1] = typed[at+1], typed[at]
		}
		if got := nearest.Names(string(typed), []string{known}); !slices.Equal(got, []string{known}) {
			t.Fatalf("%q is not near %q", typed, known)
		}
	}
}

func TestNearestComesFirstAndEqualsStayInOrder(t *testing.T) {
	tests := []struct {
		name  string
		known []string
		want  []string
	}{
		{"abcdef", []string{"abcdxy", "abcdex", "abcdef"}, []string{"abcdef", "abcdex", "abcdxy"}},
		{"abcdef", []string{"abcdez", "abcdex", "abcdey"}, []string{"abcdez", "abcdex", "abcdey"}},
		{"abcdef", []string{"abcdxy", "abcdew", "abcdex", "abcdey"}, []string{"abcdew", "abcdex", "abcdey"}},   // at most three
		{"palm", []string{"palm-kernel", "plam", "palm-olein"}, []string{"plam", "palm-kernel", "palm-olein"}}, // a word of it comes last
		{"ho", []string{"ho-leaf", "hp"}, []string{"hp", "ho-leaf"}},                                           // of two letters, too
	}
	for _, test := range tests {
		if diff := cmp.Diff(test.want, nearest.Names(test.name, test.known)); diff != "" {
			t.Errorf("near %q (-want +got):\n%s", test.name, diff)
		}
	}
}

func TestRemedyNamesWhatIsNear(t *testing.T) {
	tests := []struct {
		known []string
		want  string
	}{
		{[]string{"abcdex"}, "did you mean abcdex?"},
		{[]string{"abcdex", "abcdey"}, "did you mean abcdex or abcdey?"},
		{[]string{"abcdex", "abcdey", "abcdez"}, "did you mean abcdex, abcdey or abcdez?"},
		{[]string{"quite"}, ""},
	}
	for _, test := range tests {
		if got := nearest.Remedy("abcdef", test.known); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

// Against the count by trial of all words of up to five letters out of two, and of longer ones.
func TestADistanceIsTheFewestChanges(t *testing.T) {
	words := []string{
		"", "olive", "oilve", "loive", "lantern pear", "lantern peach", "titanium dioxide", "iron oxide red", "caf\u00e9",
		strings.Repeat("lantern ", 8), strings.Repeat("lanetrn ", 8), strings.Repeat("lantern walk ", 8),
	}
	for n := range 5 {
		for of := range 1 << (n + 1) {
			var word []byte
			for i := range n + 1 {
				word = append(word, "ab"[of>>i&1])
			}
			words = append(words, string(word))
		}
	}
	for _, a := range words {
		for _, b := range words {
			if min(len(a), len(b)) > 64 {
				continue
			}
			want := changes(a, b, map[[2]int]int{})
			if got := nearest.Distance(a, b); got != want {
				t.Errorf("%q and %q are %d apart, want %d", a, b, got, want)
			}
			for most := range 12 {
				w := nearest.WordOf(a[:min(len(a), 64)])
				if got := w.Distance(b, most); len(a) <= 64 && (want <= most && got != want || want > most && got <= most) {
					t.Errorf("%q and %q are %d apart, told up to %d as %d", a, b, want, most, got)
				}
			}
		}
	}
}

// Two long words are as far apart as can be, unless they are one.
func TestLongWordsAreFarApart(t *testing.T) {
	long := strings.Repeat("lantern walk ", 8)
	if nearest.Distance(long, long) != 0 || nearest.Distance(long, long[1:]) != len(long) {
		t.Errorf("%d and %d apart", nearest.Distance(long, long), nearest.Distance(long, long[1:]))
	}
}
