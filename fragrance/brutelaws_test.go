package fragrance_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/refdata"
	"example.com/lyewright/units"
)

// A judge under both laws that knows nothing of the library but the bytes of its tables: for
// every limit of both it goes through every line of every material and adds up fractions, what
// a Schiff base brings of its aldehyde included.

// bothRow is a row with a limit, of the Standards or of the entries.
type bothRow struct {
	name           string // such as "eu 072"
	european       bool
	members, joint map[string]bool
	with           []string // the rows whose substances count, too
	limit          *big.Rat
}

var bothRows = sync.OnceValue(func() (rows []bothRow) {
	for _, table := range []struct {
		key, law  string
		cas, also int
	}{{"standards", "ifra", 9, 12}, {"entries", "eu", 6, 11}} {
		members := map[string]map[string]bool{}
		for line := range refdata.Lines(fragrance.Tables()[table.key]) {
			set := map[string]bool{}
			for _, field := range []int{table.cas, table.also} {
				for cas := range strings.SplitSeq(refdata.Field(line, field), ";") {
					set[cas] = cas != ""
				}
			}
			members[refdata.Field(line, 0)] = set
		}
		for line := range refdata.Lines(fragrance.Tables()[table.key]) {
			number := refdata.Field(line, 0)
			limit, ok := new(big.Rat).SetString(refdata.Field(line, 3))
			if !ok {
				continue
			}
			joint, with := map[string]bool{}, []string{}
			for other := range strings.FieldsSeq(refdata.Field(line, 4)) {
				with = append(with, table.law+" "+other)
				for cas, in := range members[other] {
					joint[cas] = joint[cas] || in
				}
			}
			rows = append(rows, bothRow{table.law + " " + number, table.law == "eu", members[number], joint, with, limit})
		}
	}
	return rows
})

// bruteBases are the Schiff bases, by registry number: the aldehyde and its percentage.
var bruteBases = sync.OnceValue(func() map[string][2]string {
	bases := map[string][2]string{}
	for line := range refdata.Lines(fragrance.Tables()["schiff"]) {
		bases[refdata.Field(line, 0)] = [2]string{refdata.Field(line, 1), refdata.Field(line, 2)}
	}
	return bases
})

// leaf is a material that is no blend, for the brute force: its lists source by source, in
// percent; the limits that are of the very material; its certificate.
type leaf struct {
	lists       []map[string]string
	own         map[string]bool // such as "ifra 084"
	certificate string          // percent, "" where it has none
}

// builtInLeaves reads the table of materials by itself.
var builtInLeaves = sync.OnceValue(func() map[string]leaf {
	leaves := map[string]leaf{}
	for stanza := range refdata.Stanzas(fragrance.Tables()["materials"]) {
		id, l, bySource := "", leaf{own: map[string]bool{}}, map[string]map[string]string{}
		for line := range refdata.Lines(stanza) {
			switch field := strings.Split(line, "\t"); field[0] {
			case "material":
				id = field[1]
			case "standard":
				l.own["ifra "+field[1]] = true
			case "entry":
				l.own["eu "+field[1]] = true
			case "c":
				if field[3] == "" {
					continue
				}
				if bySource[field[4]] == nil {
					bySource[field[4]] = map[string]string{}
				}
				bySource[field[4]][field[1]] = field[3]
			}
		}
		for _, list := range bySource {
			l.lists = append(l.lists, list)
		}
		leaves[id] = l
	}
	return leaves
})

// names reports whether a leaf brings anything to a row.
func (l leaf) names(row bothRow) bool {
	of := func(cas string) bool { return row.members[cas] || row.joint[cas] }
	for _, list := range l.lists {
		for cas := range list {
			if of(cas) || of(bruteBases()[cas][0]) {
				return true
			}
		}
	}
	return l.isOf(row)
}

// isOf reports whether a row, or one that counts within it, is of the very material.
func (l leaf) isOf(row bothRow) bool {
	return l.own[row.name] || slices.ContainsFunc(row.with, func(other string) bool { return l.own[other] })
}

// brings gives the percentage of a leaf that counts for a row, whether the row is named, and
// whether it is so by a substance of its own.
func (l leaf) brings(t testing.TB, row bothRow) (percent *big.Rat, named, own bool) {
	t.Helper()
	percent = new(big.Rat)
	if l.isOf(row) {
		percent, named, own = big.NewRat(100, 1), true, l.own[row.name]
	}
	for _, list := range l.lists {
		sum, direct := new(big.Rat), false
		for cas, high := range list {
			if row.members[cas] || row.joint[cas] {
				sum.Add(sum, rational(t, high))
				named, direct = true, direct || row.members[cas]
			}
			if base, is := bruteBases()[cas]; is && (row.members[base[0]] || row.joint[base[0]]) {
				share := new(big.Rat).Mul(rational(t, high), rational(t, base[1]))
				sum.Add(sum, share.Quo(share, big.NewRat(100, 1)))
				named = true
			}
		}
		if sum.Cmp(percent) > 0 {
			percent, own = sum, direct
		}
	}
	if all := big.NewRat(100, 1); percent.Cmp(all) > 0 {
		percent = all
	}
	return percent, named, own
}

// portioned is so many grams of a leaf.
type portioned struct {
	leaf
	grams *big.Rat
}

// bruteUses gives how much of every limit is used that counts and is named, the certificates'
// last, under the name "certificates".
func bruteUses(t testing.TB, dry *big.Rat, both bool, portions []portioned) map[string]*big.Rat {
	t.Helper()
	uses := map[string]*big.Rat{}
	hundred := big.NewRat(100, 1)
	word := func(p portioned) *big.Rat {
		if p.certificate == "" {
			return new(big.Rat)
		}
		use := new(big.Rat).Mul(p.grams, hundred)
		return use.Quo(use.Quo(use, rational(t, p.certificate)), dry)
	}
	certificates := new(big.Rat)
	for _, p := range portions {
		certificates.Add(certificates, word(p))
	}
	uses["certificates"] = certificates
	for _, row := range bothRows() {
		if row.european && !both {
			continue
		}
		if !slices.ContainsFunc(portions, func(p portioned) bool { return p.names(row) }) {
			continue
		}
		sum := new(big.Rat)
		for _, p := range portions {
			percent, named, own := p.brings(t, row)
			use := percent.Quo(percent.Mul(percent, p.grams), row.limit) // % over %
			use.Quo(use, dry)
			if word := word(p); !named || !own && word.Cmp(use) > 0 {
				use = word
			}
			sum.Add(sum, use)
		}
		uses[row.name] = sum
	}
	return uses
}

func largest(uses map[string]*big.Rat) *big.Rat {
	most := new(big.Rat)
	for _, use := range uses {
		if use.Cmp(most) > 0 {
			most = use
		}
	}
	return most
}

// Hundreds of parts of one to four materials: built-in oils (the geraniums often), lists of the
// maker's with Schiff bases, their aldehydes, isomers and what European law limits, with and
// without certificates, and blends of these. Under each law the library and the brute force
// must agree on the cap of each material alone, on what is used of the limit that is used most,
// and on how many limits are passed.
func TestRandomPartsUnderBothLawsAgainstABruteForceSum(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1223))
	pool := []string{ // what European law limits more often
		"89-43-0", "107-75-5", "89-43-0", "107-75-5", "89-43-0", "107-75-5",
		"89-43-0", "107-75-5", "67801-47-2", "5392-40-5", "106-26-3", "67845-42-5", "106-23-0", "67924-13-4", "101-86-0",
		"68527-78-6", "122-40-7",
		"91-50-9", "103-95-7", "94386-48-8", "104-55-2", "37837-44-8", "39129-16-3", "100-52-7", "97-54-1", "5912-86-7",
		"111-12-6", "111-80-8",
		"23696-85-7", "57378-68-4", "35044-68-9", "106-22-9", "7540-51-4", "1117-61-9", "17369-59-4", "85-91-6", "97-53-0",
		"78-70-6",
	}
	geraniums := []string{"geranium-bourbon", "geranium-chinese", "geranium-egyptian", "geranium-moroccan"}
	var ids []string
	for id := range builtInLeaves() {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	counted := map[string]int{}
	for round := range 300 {
		var supplied []fragrance.Supplied
		made := map[string][]portioned{} // what a gram of it is
		names := []string{}
		for k := range 1 + random.IntN(4) {
			id := fmt.Sprint("scent-", k)
			switch kind := random.IntN(8); {
			case kind == 0:
				id = geraniums[random.IntN(len(geraniums))]
			case kind < 3:
				id = ids[random.IntN(len(ids))]
			case kind == 3 && len(supplied) > 0 && len(supplied[0].Blend) == 0:
				inner, oil := supplied[0].ID, ids[random.IntN(len(ids))]
				n := 1 + random.IntN(99)
				supplied = append(supplied, fragrance.Supplied{ID: id, Blend: []fragrance.Share{
					{Fragrance: inner, Share: units.Percent(int64(n))}, {Fragrance: oil, Share: units.Percent(int64(100 - n))},
				}})
				made[id] = []portioned{
					{made[inner][0].leaf, big.NewRat(int64(n), 100)},
					{builtInLeaves()[oil], big.NewRat(int64(100-n), 100)},
				}
			default:
				s, list := fragrance.Supplied{ID: id}, map[string]string{}
				for _, at := range random.Perm(len(pool))[:random.IntN(5)] {
					list[pool[at]] = decimal(1+random.IntN(150_000), 4)
				}
				for cas, share := range list {
					s.Constituents = append(s.Constituents, fragrance.Constituent{
						CAS:   number(t, cas),
						Share: units.Exactly(pct(share)),
					})
				}
				own := leaf{lists: []map[string]string{list}}
				if random.IntN(2) == 0 {
					own.certificate = decimal(1+random.IntN(20_000), 4)
					s.Certificates = certified("", own.certificate).Certificates
				}
				supplied = append(supplied, s)
				made[id] = []portioned{{own, big.NewRat(1, 1)}}
			}
			if _, own := made[id]; !own {
				made[id] = []portioned{{builtInLeaves()[id], big.NewRat(1, 1)}}
			}
			if !slices.Contains(names, id) {
				names = append(names, id)
			}
		}
		for _, law := range []fragrance.Law{fragrance.IFRAAndEU, fragrance.IFRAAlone} {
			both := law == fragrance.IFRAAndEU
			s, err := fragrance.NewShelf(supplied, law)
			if err != nil {
				t.Fatal(err)
			}
			dry := big.NewRat(int64(1_000_000+random.IntN(900_000_000)), 1_000_000)
			var doses []fragrance.Dose
			var portions []portioned
			for _, id := range names {
				m := find(t, s, id)
				alone := largest(bruteUses(t, big.NewRat(1, 1), both, made[id]))
				want := ""
				if alone.Cmp(big.NewRat(1, 1)) >= 0 {
					most := new(big.Rat).Inv(alone)
					down := new(big.Int).Quo(new(big.Int).Mul(most.Num(), big.NewInt(100_000_000)), most.Denom())
					want = units.Whole(down.Int64()).Over(units.Whole(100_000_000)).PercentText(6)
				}
				got := ""
				if caps := m.Caps(law); len(caps) > 0 {
					got = caps[0].Most.PercentText(6)
				}
				if got != want {
					t.Fatalf("round %d, %s under %v: at most %q, by brute force %q", round, id, law, got, want)
				}
				ng := int64(1 + random.IntN(20_000_000)) // a part of what binds, or of 20 g
				if alone.Sign() > 0 {
					f, _ := new(big.Rat).Quo(dry, alone).Float64()
					ng = 1 + int64(f*1e9*(0.05+1.2*random.Float64()))
					ng = min(ng, 400_000_000_000)
				}
				mass := big.NewRat(ng, 1_000_000_000)
				doses = append(doses, fragrance.Dose{Material: m, Mass: grams(t, decimal(ng, 9))})
				for _, p := range made[id] {
					portions = append(portions, portioned{p.leaf, new(big.Rat).Mul(p.grams, mass)})
				}
			}
			uses := bruteUses(t, dry, both, portions)
			over := 0
			for name, use := range uses {
				if use.Cmp(big.NewRat(1, 1)) > 0 {
					over++
					counted["passed by "+strings.Fields(name)[0]]++
				}
			}
			v := fragrance.Judge(law, grams(t, dry.FloatString(6)), doses)
			if v.Passed() != over {
				t.Fatalf("round %d, %v under %v: %d limits passed, by brute force %d", round, names, law, v.Passed(), over)
			}
			want := largest(uses)
			most, _ := v.Most()
			if off := new(big.Rat).Sub(rational(t, most.Used.Or(units.Whole(0)).Text(12)), want); off.Abs(off).Cmp(big.NewRat(1,
				100_000_000)) > 0 {
				t.Fatalf("round %d, %v under %v: %s uses %s, by brute force %s", round, names, law, most.Rule.Name(),
					most.Used.Text(12), want.FloatString(12))
			}
			if over == 0 {
				counted["kept"]++
			}
			if most.Rule.Body() == fragrance.EU && most.Rule.Number() == "072" {
				counted["072 used most"]++
			}
		}
	}
	t.Log(counted)
	for _, kind := range []string{"passed by eu", "passed by ifra", "passed by certificates", "kept", "072 used most"} {
		if counted[kind] < 10 {
			t.Errorf("%s: %d times", kind, counted[kind])
		}
	}
}
