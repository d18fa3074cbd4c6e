package fragrance_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
)

// A judge that knows nothing of the library but its table of Standards: it goes through
// the rows one by one and adds up fractions.

// scent is a material for the brute force: its list by registry number, in percent, and
// its certificate in percent, "" where it has none.
type scent struct {
	list        map[string]string
	certificate string
	mass        string // g
}

func rational(t testing.TB, text string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatal(text)
	}
	return r
}

// bruteRow is a row of the table of Standards that has a limit.
type bruteRow struct {
	members, joint map[string]bool
	limit          *big.Rat
}

var bruteRows = sync.OnceValue(func() (rows []bruteRow) {
	members := map[string]map[string]bool{}
	for line := range refdata.Lines(fragrance.Tables()["standards"]) {
		set := map[string]bool{}
		for cas := range strings.SplitSeq(refdata.Field(line, 9), ";") {
			set[cas] = true
		}
		members[refdata.Field(line, 0)] = set
	}
	for line := range refdata.Lines(fragrance.Tables()["standards"]) {
		if limit, ok := new(big.Rat).SetString(refdata.Field(line, 3)); ok {
			rows = append(rows, bruteRow{members[refdata.Field(line, 0)], members[refdata.Field(line, 4)], limit})
		}
	}
	return rows
})

// bruteUse gives the largest share of any limit, of all the rows and the certificates.
func bruteUse(t testing.TB, dry string, scents []scent) *big.Rat {
	t.Helper()
	of, most := rational(t, dry), new(big.Rat)
	take := func(sum *big.Rat) {
		if sum.Quo(sum, of); sum.Cmp(most) > 0 {
			most = sum
		}
	}
	word := func(s scent) *big.Rat { // what its certificate says it may use
		if s.certificate == "" {
			return new(big.Rat)
		}
		return new(big.Rat).Quo(new(big.Rat).Mul(rational(t, s.mass), big.NewRat(100, 1)), rational(t, s.certificate))
	}
	certificates := new(big.Rat)
	for _, s := range scents {
		certificates.Add(certificates, word(s))
	}
	take(certificates)
	for _, row := range bruteRows() {
		sum, named := new(big.Rat), false
		for _, s := range scents {
			share, own := new(big.Rat), false
			for cas, percent := range s.list {
				if row.members[cas] || row.joint[cas] {
					share.Add(share, rational(t, percent))
					own = own || row.members[cas]
					named = true
				}
			}
			use := share.Quo(share.Mul(share, rational(t, s.mass)), row.limit) // % over %
			if word := word(s); !own && word.Cmp(use) > 0 {
				use = word
			}
			sum.Add(sum, use)
		}
		if named {
			take(sum)
		}
	}
	return most
}

func (s scent) material(t testing.TB, id string, natural bool) fragrance.Material {
	t.Helper()
	supplied := fragrance.Supplied{ID: id, Natural: natural}
	for cas, share := range s.list {
		supplied.Constituents = append(supplied.Constituents, fragrance.Constituent{CAS: number(t, cas), Share: units.Exactly(pct(share))})
	}
	if s.certificate != "" {
		supplied.Certificates = certified("", s.certificate).Certificates
	}
	m, err := fragrance.NewShelf([]fragrance.Supplied{supplied}, fragrance.IFRAAlone)
	if err != nil {
		t.Fatal(err)
	}
	return find(t, m, id)
}

// decimal gives a number of so many places.
func decimal[N int | int64](n N, places int) string {
	digits := fmt.Sprintf("%0*d", places+1, n)
	return digits[:len(digits)-places] + "." + digits[len(digits)-places:]
}

// Parts of three materials: one with a certificate alone; one whose list has two isomers
// of one Standard, each at about 60 % of it; one natural, with a ceiling. The library
// and the brute force must agree on what is used, on whether it passes, and on the most
// of each to a nanogram.
func TestRandomPartsAgainstABruteForceSum(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 51))
	isomers := [][2]string{
		{"141-27-5", "106-26-3"}, {"469-61-4", "546-28-1"}, {"546-80-5", "471-15-8"}, {"99-49-0", "2244-16-8"}, {"111-12-6", "111-80-8"}, {"90028-68-5", "90028-67-4"}, {"23696-85-7", "23726-91-2"},
	}
	ceilings := []string{"94-59-7", "494-40-6", "140-29-4", "531-59-9", "78-59-1"}
	passed, kept, compared := 0, 0, 0
	for range 120 {
		pair := isomers[random.IntN(len(isomers))]
		ceiling := ceilings[random.IntN(len(ceilings))]
		scents := []scent{
			{certificate: decimal(1+random.IntN(80_000), 4)},
			{list: map[string]string{pair[0]: decimal(1+random.IntN(400_000), 4), pair[1]: decimal(1+random.IntN(400_000), 4)}},
			{list: map[string]string{ceiling: decimal(1+random.IntN(5_000), 4), "97-53-0": decimal(1+random.IntN(500_000), 4)}},
		}
		if random.IntN(3) == 0 {
			scents[1].certificate = decimal(1+random.IntN(200_000), 4)
		}
		if random.IntN(3) == 0 {
			scents[2].list[pair[0]] = decimal(1+random.IntN(20_000), 4)
		}
		dry := decimal(1_000_000+random.IntN(900_000_000), 6)
		for i := range scents {
			scents[i].mass = decimal(1, 9)
			// 60 % of what the limits leave alone, more or less
			one := new(big.Rat).Mul(bruteUse(t, dry, scents[i:i+1]), big.NewRat(1_000_000_000, 1))
			f, _ := one.Float64()
			scents[i].mass = decimal(1+int64((0.1+0.5*random.Float64())/f*1e9), 9)
		}
		doses := make([]fragrance.Dose, len(scents))
		for i, s := range scents {
			doses[i] = fragrance.Dose{Material: s.material(t, fmt.Sprint("scent-", i), i == 2), Mass: grams(t, s.mass)}
		}
		v := fragrance.Judge(fragrance.IFRAAlone, grams(t, dry), doses)
		want := bruteUse(t, dry, scents)
		most, _ := v.Most()
		if got := rational(t, most.Used.Text(12)); new(big.Rat).Abs(new(big.Rat).Sub(got, want)).Cmp(big.NewRat(1, 100_000_000)) > 0 {
			t.Fatalf("%+v in %s g: %s, by brute force %s", scents, dry, most.Used.Text(12), want.FloatString(12))
		}
		if over := want.Cmp(big.NewRat(1, 1)) > 0; over != (v.Passed() > 0) {
			t.Fatalf("%+v in %s g: %d passed, by brute force %s", scents, dry, v.Passed(), want.FloatString(20))
		} else if over {
			passed++
		} else {
			kept++
		}
		for i := range scents {
			r := v.Of(i)
			for k := 1; k < len(r.Caps); k++ { // whatever the part uses most of, the smallest binds
				if r.Caps[k].Most.Compare(r.Caps[k-1].Most) < 0 {
					t.Fatalf("%+v in %s g: scent-%d has a cap of %v before one of %v", scents, dry, i, r.Caps[k-1].Most, r.Caps[k].Most)
				}
			}
			if !r.Limited || r.Most.Sign() == 0 {
				continue
			}
			// At the most it passes, a nanogram more is too much, the base growing with it. A
			// limit that this material brings nothing to may be passed by the others: such
			// parts say nothing here.
			at := func(mass units.Mass) int {
				with := append([]scent(nil), scents...)
				with[i].mass = mass.Text(units.Gram, 9)
				base := grams(t, dry).Sub(doses[i].Mass).Add(mass)
				return bruteUse(t, base.Text(units.Gram, 9), with).Cmp(big.NewRat(1, 1))
			}
			nothing := at(units.Mass{})
			nanogram := grams(t, "0.000000001")
			if nothing > 0 {
				continue
			}
			compared++
			for _, mass := range []units.Mass{r.Most, r.Most.Add(nanogram)} {
				with := append([]fragrance.Dose(nil), doses...)
				with[i].Mass = mass
				at := at(mass) > 0
				if v := fragrance.Judge(fragrance.IFRAAlone, grams(t, dry).Sub(doses[i].Mass).Add(mass), with); (v.Passed() > 0) != at {
					t.Fatalf("%+v in %s g, with %s g of scent-%d: %d passed, by brute force %v", scents, dry, mass.Text(units.Gram, 9), i, v.Passed(), at)
				}
			}
			if at(r.Most) > 0 || at(r.Most.Add(nanogram)) <= 0 {
				t.Fatalf("%+v in %s g: at most %s g of scent-%d", scents, dry, r.Most.Text(units.Gram, 9), i)
			}
		}
	}
	if passed < 20 || kept < 20 || compared < 100 {
		t.Errorf("%d passed, %d kept, %d compared", passed, kept, compared)
	}
}
