package fragrance

import (
	"cmp"
	"math"
	"math/big"
	"slices"

	"example.com/lyewright/units"
)

// Dose is so much of a material in a part of a batch. The zero value is none.
type Dose struct {
	Material Material   // what goes in
	Mass     units.Mass // of the material, without what is beside it: above 0 g
	// Beside is the dry mass that comes and goes with the fragrance, per mass of it, such
	// as a carrier of oil; not given means none.
	Beside units.Ratio
}

// with gives what comes and goes with a gram of the fragrance, in grams: itself, and what is
// beside it.
func (d *Dose) with() units.Ratio { return units.Whole(1).Add(d.Beside.Or(units.Whole(0))) }

// Verdict is what the rules say of a part of a batch, or of a piece.
//
// For every limit, what each material brings to it is added up as a share of the
// limit, and all of them together are at most 1:
//
//   - what a material's list names brings its share of the material, over the limit;
//   - what its list does not name brings the dose over the certified limit, where it has
//     a certificate: for each constituent, dose × content ≤ dose over certified limit ×
//     limit of the constituent;
//   - and nothing where its list is complete. Where it is not, and there is no
//     certificate, it is unknown: see [Material.Unjudged].
//
// The certificates stand for every rule that no list names: they are a limit of their
// own. The base is the dry mass with all fragrances in it. It comes from [Judge]; the zero
// value has judged nothing.
type Verdict struct {
	law   Law
	dry   units.Mass
	doses []Dose

	rows []*rule     // the limits that a list names, in the rules' order
	uses [][]float64 // of each dose: of each row and, last, of the certificates: how much of the limit a mass uses, per mass
	used []float64   // of each row, last of the certificates: how much of the limit is used
}

// Judge holds what is in a part against the rules. dry is the part's dry mass, with
// the fragrances and what comes and goes with them: above 0 g, as every dose is; less than
// a nanogram counts as one. That no limit is passed clears nothing that is not judged:
// see [Material.Unjudged].
func Judge(law Law, dry units.Mass, doses []Dose) Verdict {
	if dry.Sign() <= 0 { // less than a nanogram
		dry = toMass(big.NewRat(1, 1_000_000_000))
	}
	v := Verdict{law: law, dry: dry, doses: slices.Clone(doses)}
	for _, d := range doses {
		for _, p := range d.Material.get().parts {
			for i := range p.m.limits {
				v.row(p.m.limits[i].rule)
			}
		}
	}
	slices.SortFunc(v.rows, func(a, b *rule) int { return cmp.Compare(a.index, b.index) })
	n := len(v.rows) + 1
	all := make([]float64, n*(len(doses)+1))
	v.used = all[:n]
	v.uses = make([][]float64, len(doses))
	for j := range doses {
		all = all[n:]
		v.uses[j] = all[:n]
		v.use(j)
		share := doses[j].Mass.Grams() / dry.Grams()
		for i, use := range v.uses[j] {
			v.used[i] += float64(use * share)
		}
	}
	return v
}

// row makes room for a rule.
func (v *Verdict) row(r *rule) {
	if v.law.counts(r) && !slices.Contains(v.rows, r) {
		v.rows = append(v.rows, r)
	}
}

// use works out what a dose uses of every limit, per mass of it.
func (v *Verdict) use(j int) {
	uses := v.uses[j]
	for _, p := range v.doses[j].Material.get().parts {
		certified := float64(p.m.certificate.use * p.part)
		uses[len(v.rows)] += certified
		limits := p.m.limits // in the rules' order, as the rows are
		for i, r := range v.rows {
			for len(limits) > 0 && limits[0].rule.index < r.index {
				limits = limits[1:]
			}
			if len(limits) == 0 || limits[0].rule != r {
				uses[i] += certified
				continue
			}
			use := float64(limits[0].use * p.part)
			if limits[0].aside {
				use = max(use, certified)
			}
			uses[i] += use
		}
	}
}

// near is how close to a limit the reckoning in float64 is not trusted, as a share of
// it: the decision is then exact.
const near = 1e-9

// Passed counts the limits that are passed: those of rules, and the certificates together
// as one. 0 says that none of the limits that are known is passed.
func (v Verdict) Passed() (n int) {
	for i := range v.used {
		if v.passed(i) {
			n++
		}
	}
	return n
}

func (v *Verdict) passed(row int) bool {
	used := v.used[row]
	return used > 1+near || used > 1-near && v.exact(row).Cmp(one()) > 0
}

// Use is how much of a limit a part or a piece uses.
type Use struct {
	Rule Rule        // whose limit it is; not given: the limit of the certificates
	Used units.Ratio // of the limit, to 10^-8: 100 % is all of it
	By   int         // the dose that uses most of it, counted from 0
}

// Most gives the limit that is used most; ok is false where none is used.
func (v Verdict) Most() (u Use, ok bool) {
	most := -1
	for i, used := range v.used {
		if used > 0 && (most < 0 || used > v.used[most]) {
			most = i
		}
	}
	if most < 0 {
		return Use{}, false
	}
	return v.of(most), true
}

// Over lists the limits that are passed, the one that is used most first; of two on the
// same substances the stricter.
func (v Verdict) Over() []Use {
	var rows []int
	for i := range v.used {
		if v.passed(i) {
			rows = append(rows, i)
		}
	}
	slices.SortStableFunc(rows, func(a, b int) int { return cmp.Compare(v.used[b], v.used[a]) })
	var uses []Use
	for k, row := range rows {
		if !v.said(row, rows[:k]) {
			uses = append(uses, v.of(row))
		}
	}
	return uses
}

// Ceilings lists the natural ceilings ([Ceiling]) that are used and kept, in the order of
// the rules.
func (v Verdict) Ceilings() []Use {
	var uses []Use
	for i, r := range v.rows {
		if r.standing == Ceiling && !v.passed(i) {
			uses = append(uses, v.of(i))
		}
	}
	return uses
}

// of writes down how much of a limit is used.
func (v *Verdict) of(row int) Use {
	u := Use{Used: v.shownUse(row)}
	if row < len(v.rows) {
		u.Rule = Rule{v.rows[row]}
	}
	most := 0.0
	for j := range v.doses {
		if use := v.uses[j][row] * v.doses[j].Mass.Grams(); use > most {
			u.By, most = j, use
		}
	}
	return u
}

// shownUse gives how much of a limit is used, as it is shown. Only where float64 cannot tell
// which way it rounds is it worked out exactly.
func (v *Verdict) shownUse(row int) units.Ratio {
	const scale = 1e8 // ten to the power of shown
	scaled := v.used[row] * scale
	n := math.Round(scaled)
	// The sum of a hundred thousand terms is off by less than 1e-11 of itself.
	if scaled < 1e10 && math.Abs(math.Abs(scaled-n)-0.5) > 1e-3+scaled*1e-11 {
		return units.Whole(int64(n)).Over(units.Whole(int64(scale)))
	}
	return toRatio(v.exact(row), shown, units.Nearest)
}

// Fragrance gives the share of all fragrances together, of the dry mass, to 10^-8.
func (v Verdict) Fragrance() units.Ratio {
	var all units.Mass
	for i := range v.doses {
		all = all.Add(v.doses[i].Mass)
	}
	return share(all, v.dry)
}

// share gives a mass as a share of another, with as many places as are shown.
func share(of, all units.Mass) units.Ratio {
	r, _ := of.Per(all)
	return r.Round(shown, units.Nearest)
}
