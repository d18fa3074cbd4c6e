package soap_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/lyewright/soap"
)

// Taken for the oil of its plant, a food would count as fat, and the alkali for it would be left over: no oil is
// offered for one, in whatever language, nor for another product of the plant.
func TestNoOilIsOfferedForAFood(t *testing.T) {
	foods := strings.Split("Kokosmehl,Kokosmilch,Kokosmus,Kokosgel,Kokosraspel,Mandelmilch,Mandelmehl,Mandelmus,Mandel-Milch,"+
		"Hafermilch,Sojamilch,Haselnussmus,Erdnussmus,Leinmehl,Olivengel,Olivenblatt,Olivenblätter,Avocadomus,"+
		"Avocado-Milch,Mangosaft,Traubensaft,Maismehl,Reismehl,Reiskleie,Reismilch,Hanfmilch,Hanfmehl,"+
		"Sesammus,Rapskuchen,Kakaoblätter,Kakaoschalen,Kokosbutter,Palm-Kleie,Sojagel,lait de coco,"+
		"lait d'amande,lait de soja,crème de coco,eau de coco,farine de coco,farine d'amande,purée d'amande,"+
		"jus de raisin,tourteau de colza,son de riz,son de blé,amidon de maïs,sucre de coco,feuille d'olivier,"+
		"coque de cacao,pâte de sésame,argan jus,leche de coco,leche de almendra,crema de coco,harina de coco,"+
		"harina de almendra,agua de coco,agua de almendra,salvado de arroz,salvado de trigo,torta de soja,"+
		"azúcar de palma,almidón de maíz,almidón de soja,hoja de oliva,cáscara de cacao,pasta de sésamo,"+
		"puré de aguacate,olive leaf,olive leaves,olive cake,olive soap,olive stone,apricot bran,wheat bran,"+
		"oat bran,soy bran,soybran,corn bran,rice bark,rice husk,rice hulls,rice bran flour,coconut cake,"+
		"coconut husk,coconut jam,coconut salt,palm cake,sunflower cake,rapeseed cake,linseed cake,"+
		"linseed husk,hemp protein,hemp beer,grape beer,flaxbeer,grape pips,almond bran,almond honey,"+
		"almondgum,avocado pit,avocado stone,cocoa husk,cocoa shell,cocoa salt,cocoa nibs,shea husk,"+
		"castor cake,neem cake,neem leaf,mustard cake,mustard bran,peanut protein,sesame salt,walnut bark,"+
		"sheanut,oat flower,soyflower,palmnut", ",")
	for _, name := range foods {
		oil, err := soap.LookUpOil(name)
		var bad soap.Fault
		if !errors.As(err, &bad) {
			t.Errorf("%s is found as %s", name, oil.ID())
		} else if strings.Contains(bad.Remedy, "did you mean") || strings.HasPrefix(bad.Remedy, "write ") {
			t.Errorf("%s: %s", name, bad.Remedy)
		}
	}
	if len(foods) < 120 {
		t.Errorf("%d foods", len(foods))
	}
}

// A slip of a letter or two is still answered, words of the trade beside it or not.
func TestAMistypedOilIsStillOffered(t *testing.T) {
	for name, id := range map[string]string{
		"olvie":                "olive",
		"oliv oil":             "olive",
		"pure oliv oil":        "olive",
		"organic cocnut":       "coconut",
		"cocnut":               "coconut",
		"kokosnusöl":           "coconut",
		"sunflwer":             "sunflower",
		"plam oil":             "palm",
		"palm kernal oil":      "palm-kernel",
		"rise bran":            "rice-bran",
		"shea buter":           "shea-butter",
		"cocoa buttr":          "cocoa-butter",
		"avacado oil, refined": "avocado",
		"almnd":                "almond",
		"hempseed oli":         "hemp-seed",
		"soyben oil":           "soybean",
	} {
		_, err := soap.LookUpOil(name)
		var bad soap.Fault
		if !errors.As(err, &bad) || bad.Remedy != "did you mean "+id+"?" {
			t.Errorf("%s: %v, want %s", name, err, id)
		}
	}
}
