package fragrance_test

import (
	"strings"
	"testing"

	"example.com/lyewright/fragrance"
	"example.com/lyewright/units"
	"example.com/lyewright/units/fault"
)

// Cassia caps at 0.49 % of cinnamal over 79.5 % of it, 0.616352 % (the worked example of cassia oil); half of it in a
// blend with what is restricted by nothing caps at twice that, whatever the half is called.
func TestABlendTakesItsMaterialsByWhateverNameTheyAreCalled(t *testing.T) {
	diluent := fragrance.Supplied{ID: "Quiet oil", Complete: true, ConstituentsListed: true}
	for _, names := range [][2]string{
		{"cassia", "Quiet oil"},
		{"Cassia", "quiet-oil"},
		{"cassia oil", "QUIET OIL"},
		{"Cassia Essential Oil", "Quiet oil"},
		{"Cinnamomum cassia", "Quiet oil"},
	} {
		mix := fragrance.Supplied{ID: "mix", Blend: []fragrance.Share{{names[0], pct("50")}, {names[1], pct("50")}}}
		caps := find(t, shelf(t, diluent, mix), "mix").Caps(fragrance.IFRAAlone)
		if len(caps) == 0 || caps[0].Most.PercentText(6) != "1.232704" {
			t.Errorf("%q: %+v, want 1.232704 %%", names, caps)
		}
	}
	// A blend of a blend, which is spelled otherwise there.
	inner := fragrance.Supplied{ID: "Lantern Mix", Blend: []fragrance.Share{{"Cassia Oil", pct("100")}}}
	outer := fragrance.Supplied{ID: "outer", Blend: []fragrance.Share{
		{"lantern-mix", pct("50")},
		{"quiet oil", pct("50")},
	}}
	caps := find(t, shelf(t, diluent, outer, inner), "outer").Caps(fragrance.IFRAAlone)
	if len(caps) == 0 || caps[0].Most.PercentText(6) != "1.232704" {
		t.Errorf("a blend in a blend: %+v", caps)
	}
}

func TestABlendRefusesANameThatMeansNoOneMaterial(t *testing.T) {
	for _, test := range []struct {
		blend  []fragrance.Share
		path   string
		reason string
		remedy string
		kind   error
	}{
		{
			[]fragrance.Share{{"cassia", pct("50")}, {"Cassia oil", pct("50")}},
			"[1].blend[1].fragrance", "stands twice",
			"put both into one", fault.ErrConflict,
		},
		{
			[]fragrance.Share{{"clove oil", pct("100")}},
			"[1].blend[0].fragrance", "may mean clove-bud",
			"write clove-bud or clove-leaf or clove-stem", fault.ErrUnknown,
		},
		{
			[]fragrance.Share{{"lavendar", pct("100")}},
			"[1].blend[0].fragrance", "is not a material that is known",
			"did you mean lavender?", fault.ErrUnknown,
		},
		{
			[]fragrance.Share{{"lantern peer", pct("100")}},
			"[1].blend[0].fragrance", "is not a material that is known",
			"did you mean Lantern pear?", fault.ErrUnknown,
		},
		{
			[]fragrance.Share{{"MIX", pct("100")}},
			"[1].blend[0].fragrance", "leads back to", "leave it out of one of these",
			fault.ErrConflict,
		},
		{
			[]fragrance.Share{{"moonlight", units.Percent(100)}},
			"[1].blend[0].fragrance", "is not a material that is known",
			"name a material of this list, or a built-in fragrance", fault.ErrUnknown,
		},
	} {
		faults := faultsOf(t, fragrance.IFRAAndEU, certified("Lantern pear", "2"), fragrance.Supplied{
			ID:    "mix",
			Blend: test.blend,
		})
		if len(faults) != 1 || faults[0].Path != test.path || !strings.HasPrefix(faults[0].Reason, test.reason) ||
			faults[0].Remedy != test.remedy || faults[0].Kind != test.kind {
			t.Errorf("%+v: %v", test.blend, faults)
		}
	}
}
