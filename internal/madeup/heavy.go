package madeup

import (
	"math"
	"math/rand/v2"
	"strconv"

	"example.com/lyewright/colour"
	"example.com/lyewright/colour/tint"
	"example.com/lyewright/fragrance"
	"example.com/lyewright/internal/jsonwrite"
)

// Heavy says how much there is of everything in a formula that costs as much as it can. Its
// file, [Heavy.Text], is the same in every run. The zero value of a field leaves it out.
type Heavy struct {
	Oils, Acids, Liquids, Parts   int // Liquids of the lye, each with fat
	Fragrances, Additives, Tinted int // in each part; Tinted are colourants
	Matched                       int // colourants of each part whose loads are looked for
	// the maker's own fragrances, and what each lists; they stand before the built-in ones
	Materials, Constituents       int
	Blends, Nested                int // the last so many Materials are blends, of blends that nest so deep
	Vessels, Moulds               int // Moulds of each: what does not fit makes a last batch
	Layers                        int // of each vessel
	Swatches, Bands               int
	Promise, Most, OfBatter, Held bool // at_least; "max" in every part; loads of batter; carriers out of the formula
	Weighed                       bool
}

// Text writes the file.
func (h Heavy) Text() []byte {
	w := writer{jsonwrite.New()}
	r := rand.New(rand.NewPCG(15, 2026))
	w.Object("", func() {
		w.Text("formula", "Lantern walk, all at once")
		w.List("oils", func() {
			for i := range max(1, h.Oils) {
				w.Object("", func() {
					w.Text("oil", "lot-"+strconv.Itoa(i+1))
					if i == 0 {
						w.Text("share", "rest")
					} else {
						w.Text("share", "0.9 %")
					}
					w.Object("saponification", func() {
						w.Text("low", strconv.Itoa(186+i%7))
						w.Text("typical", strconv.Itoa(190+i%7)+".5")
						w.Text("high", strconv.Itoa(196+i%7))
					})
				})
			}
		})
		w.List("alkali", func() {
			for _, kind := range []string{"sodium-hydroxide", "potassium-hydroxide"} {
				w.Object("", func() {
					w.Text("kind", kind)
					w.Object("purity", func() { w.Text("low", "95.5 %"); w.Text("high", "97.1234567 %") })
					w.Text("saponifies", "50 %")
				})
			}
		})
		if h.Promise {
			w.Object("superfat", func() { w.Text("at_least", "3 %") })
		} else {
			w.Text("superfat", "9 %")
		}
		w.Object("water", func() {
			w.Text("per_oils", "45.1234567 %")
			h.liquids(w)
		})
		w.Object("scale", func() { w.Text("oils", "1 mg"); w.Text("small", "1 mg") })
		h.acids(w)
		h.materials(w, r)
		h.swatches(w, r)
		h.vessels(w)
		if h.Parts > 0 {
			w.List("parts", func() {
				for i := range h.Parts {
					h.part(w, i)
				}
			})
		}
		if h.Weighed {
			w.Object("weighed", func() {
				w.Text("stage", "parts")
				w.Object("alkali", func() { w.Text("sodium-hydroxide", "7500 g") })
			})
		}
	})
	return w.Bytes()
}

func (h Heavy) liquids(w writer) {
	if h.Liquids == 0 {
		return
	}
	w.List("liquids", func() {
		for i := range h.Liquids {
			w.Object("", func() {
				w.Text("liquid", "hall milk "+strconv.Itoa(i+1))
				w.Text("share", "1.1234567 %")
				w.Text("water", "88.1234567 %")
				w.Text("fat", "3.1234567 %")
				w.Object("saponification", func() { w.Text("low", "218"); w.Text("high", "235") })
			})
		}
	})
}

func (h Heavy) acids(w writer) {
	if h.Acids == 0 {
		return
	}
	w.List("acids", func() {
		for i, id := range []string{"citric-acid-anhydrous", "lactic-acid", "citric-acid-monohydrate"}[:h.Acids] {
			w.Object("", func() {
				w.Text("acid", id)
				w.Text("load", "0."+strconv.Itoa(i+1)+" % of batter")
				w.Object("strength", func() { w.Text("low", "88.1234567 %"); w.Text("high", "89 %") })
				w.Bool("compensate", i%2 == 0)
			})
		}
	})
}

// depth is how deep blends nest.
func (h Heavy) depth() int { return max(1, h.Nested) }

// own gives the id of one of the maker's own fragrances.
func own(i int) string { return "scent-" + strconv.Itoa(i+1) }

func (h Heavy) materials(w writer, r *rand.Rand) {
	if h.Materials == 0 {
		return
	}
	var numbers []string
	seen := map[string]bool{}
	for _, m := range fragrance.Materials() {
		for _, c := range m.Figures() {
			if cas := c.CAS.String(); cas != "" && !seen[cas] {
				seen[cas] = true
				numbers = append(numbers, cas)
			}
		}
	}
	w.List("materials", func() {
		for i := range h.Materials {
			w.Object("", func() {
				w.Text("fragrance", own(i))
				if i >= 2 && i >= h.Materials-h.Blends {
					w.List("blend", func() {
						below := i - 1
						if (i-max(2, h.Materials-h.Blends))%h.depth() == 0 {
							below = 1 // as deep as they may nest, and from the ground again
						}
						w.Object("", func() { w.Text("fragrance", own(below)); w.Text("share", "33.1234567 %") })
						w.Object("", func() { w.Text("fragrance", own(0)); w.Text("share", "66.8765433 %") })
					})
					return
				}
				w.Bool("natural", true)
				w.List("certificates", func() {
					w.Object("", func() { w.Text("category", "9"); w.Text("limit", "12.3456789 %"); w.Text("amendment", "50") })
				})
				w.List("constituents", func() {
					for k := range min(h.Constituents, len(numbers)) {
						w.Object("", func() {
							w.Text("cas", numbers[(k+7*i)%len(numbers)])
							w.Text("share", "0."+strconv.Itoa(100000+r.IntN(100000))+" %")
						})
					}
				})
				w.Texts("behaviour", []string{"accelerates"})
			})
		}
	})
}

func (h Heavy) swatches(w writer, r *rand.Rand) {
	if h.Swatches == 0 {
		return
	}
	ids := pigments()
	w.Object("swatches", func() {
		if h.Bands > 0 {
			w.Object("bands", func() { w.Text("from", "380 nm"); w.Text("step", strconv.Itoa(350/(h.Bands-1))+" nm") })
		}
		w.List("read", func() {
			for i := range h.Swatches {
				w.Object("", func() {
					w.Text("swatch", "cup "+strconv.Itoa(i+1))
					k, step := 0, 0
					if i > 0 {
						k, step = (i-1)/2%tint.MostColourants, 1+(i-1)/2/tint.MostColourants*2+(i-1)%2
						w.Object("loads", func() {
							if k > 0 {
								w.Text(ids[0], "0.5 % of batter")
							}
							w.Text(ids[k], "0."+strconv.Itoa(step*9+10)+" % of batter")
						})
					}
					if h.Bands > 0 {
						w.List("reflectance", func() {
							for b := range h.Bands {
								at := float64(b) / float64(h.Bands)
								reflects := 0.9 * math.Exp(-float64(step)*(0.2+math.Abs(math.Sin(float64(k+1)*(at+0.3))))*0.3)
								w.Number("", strconv.FormatFloat(reflects+0.001*r.Float64(), 'f', 4, 64))
							}
						})
					} else {
						s := func(n int) uint8 { return uint8(230 - (step*(20+(k*n)%37))%200) }
						w.Text("srgb", tint.SRGB{R: s(3), G: s(5), B: s(11)}.String())
					}
				})
			}
		})
	})
}

// pigments lists the ids of colourants, a white first.
func pigments() []string {
	ids := []string{"titanium-dioxide"}
	for _, c := range colour.Colourants() {
		if c.ID() != ids[0] {
			ids = append(ids, c.ID())
		}
	}
	return ids
}

func partName(i int) string { return "part " + strconv.Itoa(i+1) }

func (h Heavy) vessels(w writer) {
	if h.Vessels == 0 {
		w.Object("size", func() { w.Text("batter", "100 kg") })
		return
	}
	w.Object("size", func() {
		w.List("vessels", func() {
			for i := range h.Vessels {
				w.Object("", func() {
					w.Text("vessel", "cup "+strconv.Itoa(i+1))
					if h.Layers > 1 {
						w.Object("parts", func() {
							for k := range min(h.Layers, h.Parts) {
								if k == 0 {
									w.Text(partName(i%h.Parts), "rest")
								} else {
									w.Text(partName((i+k)%h.Parts), "1 %")
								}
							}
						})
					} else if h.Parts > 0 {
						w.Text("part", partName(i%h.Parts))
					}
					w.Int("count", 25)
					w.count("moulds", h.Moulds)
					w.Object("cylinder", func() { w.Text("diameter", "70 mm"); w.Text("height", "40 mm") })
				})
			}
		})
	})
}

func (h Heavy) part(w writer, i int) {
	ids := pigments()
	var scents []string
	for k := range h.Materials {
		scents = append(scents, own((k+i)%h.Materials))
	}
	for _, m := range fragrance.Materials() {
		scents = append(scents, m.ID())
	}
	load := func(n int) string {
		of := "oils"
		if h.OfBatter {
			of = "batter"
		}
		return "0.00" + strconv.Itoa(101+n) + " % of " + of
	}
	carrier := func(k int) {
		if h.Held {
			w.Object("carrier", func() {
				w.Text("liquid", []string{"water", "lot-1"}[k%2])
				w.Text("ratio", "1.5")
				w.Text("from", "formula")
			})
		}
	}
	w.Object("", func() {
		w.Text("part", partName(i))
		if h.Vessels == 0 {
			if i == 0 {
				w.Text("share", "rest")
			} else {
				w.Text("share", "1.7 %")
			}
		}
		w.Text("work", "piped")
		w.Text("look", "white")
		w.List("colourants", func() {
			for k := range h.Tinted {
				w.Object("", func() { w.Text("colourant", ids[(h.Matched+k)%len(ids)]); w.Text("load", load(k)); carrier(k) })
			}
		})
		w.List("fragrances", func() {
			for k := range h.Fragrances {
				w.Object("", func() {
					w.Text("fragrance", scents[k%len(scents)])
					if k == 0 && h.Most {
						w.Text("load", "max")
					} else {
						w.Text("load", load(k))
					}
					carrier(k)
				})
			}
		})
		w.List("additives", func() {
			for k := range h.Additives {
				w.Object("", func() { w.Text("additive", "hall flour "+strconv.Itoa(k+1)); w.Text("load", load(k)); carrier(k) })
			}
		})
		if h.Matched > 0 {
			w.Object("target", func() { w.floats("lab", float64(30+i), float64(i%20-10), float64(i%30-15)) })
			w.List("match", func() {
				for k := range h.Matched {
					w.Object("", func() { w.Text("colourant", ids[k]); w.Text("most", "1 % of oils"); carrier(k) })
				}
			})
		}
	})
}
