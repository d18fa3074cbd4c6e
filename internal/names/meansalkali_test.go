package names_test

import (
	"os"
	"strings"
	"testing"

	"example.com/lyewright/internal/names"
)

// Every name of the table is held against the reading by words: of the alkalis all but the carbonates, which it calls
// "no hydroxide" (note 073), and of no oil, fragrance, colourant or acid any.
func TestTheAlkalisOfTheTableAreTheOnesThatAreMeant(t *testing.T) {
	file, err := os.ReadFile("data/names.txt")
	if err != nil {
		t.Fatal(err)
	}
	alkalis, others := 0, 0
	for line := range strings.Lines(string(file)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		fields := strings.Split(strings.TrimSpace(line), "\t")
		kind, name, _ := strings.Cut(fields[0], " ")
		carbonate := kind == "alkali" && strings.HasSuffix(line, " 073\n")
		want := kind == "alkali" && !carbonate
		if want {
			alkalis++
		} else {
			others++
		}
		for _, spelled := range append(strings.Split(fields[1], " = "), name, strings.ToUpper(name)) {
			if spelled != "" && names.AlkaliMeant(spelled).Found() != want {
				t.Errorf("%s %q is taken for an alkali: %t", kind, spelled, !want)
			}
		}
	}
	if alkalis < 50 || others < 2000 {
		t.Errorf("%d names of alkalis and %d others were tried", alkalis, others)
	}
}

// A long word with any of its letters dropped, changed, doubled or swapped with the next means what it means without.
func TestAnAlkaliIsKnownWithOneLetterOff(t *testing.T) {
	tried := 0
	for _, word := range []string{
		"hydroxide", "hydroxyde", "hidroxido", "idrossido", "caustic", "caustique", "caustica",
		"kaustisch", "natronlauge", "kalilauge", "seifenstein", "quicklime", "limewater", "ammonia", "ammoniak",
		"sodiumhydroxide", "potassiumhydroxide", "natriumhydroxid", "causticsoda", "rohrreiniger", "lessive",
	} {
		for i := range len(word) {
			slips := []string{
				word[:i] + word[i+1:], word[:i] + "w" + word[i+1:], word[:i] + "z" + word[i:],
				word[:i+1] + word[i:],
			}
			if i+1 < len(word) {
				slips = append(slips, word[:i]+word[i+1:i+2]+word[i:i+1]+word[i+2:])
			}
			for _, slip := range slips {
				tried++
				for _, name := range []string{slip, "fine " + slip + " of the hall"} {
					if !names.AlkaliMeant(name).Found() {
						t.Errorf("%q is not taken for %s", name, word)
					}
				}
			}
		}
	}
	if tried < 500 {
		t.Errorf("%d slips were tried", tried)
	}
	// Short words are not: these are others, by one letter.
	for _, name := range []string{
		"dye", "rye", "eye", "bye", "kohl", "oh", "noah", "laube", "line", "armonia",
		"armonía",
	} {
		if m := names.AlkaliMeant(name); m.Found() {
			t.Errorf("%q is taken for an alkali: %+v", name, m)
		}
	}
}

// The check digit of a number of the Chemical Abstracts Service is the sum of its digits, each times its place from the
// right, modulo ten; that of the European inventory (EINECS) times its place from the left, modulo eleven.
func TestTheRegistryNumbersOfAlkalisHoldTheirCheckDigits(t *testing.T) {
	for _, number := range []string{
		"1310-73-2", "1310-58-3", "1305-62-0", "1305-78-8", "1310-65-2", "7664-41-7",
		"1336-21-6", "215-185-5", "215-181-3",
	} {
		digits := strings.ReplaceAll(number, "-", "")
		cas, european := 0, 0
		body := digits[:len(digits)-1]
		for i := range len(body) {
			cas += int(body[i]-'0') * (len(body) - i)
			european += int(body[i]-'0') * (i + 1)
		}
		check := int(digits[len(digits)-1] - '0')
		if number[3] == '-' && european%11 != check || number[3] != '-' && cas%10 != check {
			t.Errorf("%s has another check digit", number)
		}
		for _, name := range []string{number, "CAS " + number + " of the hall", "(" + number + ")"} {
			if !names.AlkaliMeant(name).Found() {
				t.Errorf("%q is not taken for an alkali", name)
			}
		}
	}
	for _, number := range []string{"497-19-8", "144-55-8", "1310-14-1", "8001-25-0"} {
		if names.AlkaliMeant(number).Found() {
			t.Errorf("%q is taken for an alkali", number)
		}
	}
}
