package soap

import (
	"slices"
	"strings"

	"example.com/lyewright/internal/names"
)

// What boils over in hot lye, by the words of its name, in English, German, French, Spanish, Italian and Dutch: in
// lower case, without accents. They are common knowledge; nobody read them anywhere.
const (
	alcoholWords wordList = " alcohol alkohol alcool ethanol etanol isopropanol isopropyl methanol spirits" +
		" spiritus tincture tinktur teinture tintura beer beers ale ales lager stout porter pils pilsner pilsener" +
		" wort bier biere cerveza birra wine wines wein vin vino wijn champagne sekt prosecco cava gluhwein cider" +
		" cidre sidra sidro mead hydromel hidromiel rum rhum ron vodka wodka whisky whiskey bourbon gin brandy" +
		" cognac armagnac tequila mezcal schnaps schnapps liqueur liqueurs liquor likor licor liquore grappa ouzo" +
		" sake absinthe absinth sherry vermouth wermut eggnog cologne kombucha "
	sugarWords wordList = " honey honig miel miele honing sugar sugars zucker sucre azucar zucchero suiker syrup" +
		" sirup sirop jarabe sirope sciroppo siroop stroop molasses melasse melaza melassa treacle maple agave" +
		" nectar nektar lemonade limonade limonada limonata cola juice juices saft jus zumo jugo succo must most" +
		" fructose fruktose glucose glukose dextrose lactose laktose sucrose saccharose maltose jam marmalade" +
		" marmelade confiture "

	milkWords wordList = " milk buttermilk whey milch molke lait lactoserum leche suero latte siero melk wei" +
		" yoghurt yogurt cream "
	driedWords wordList = " powder powdered dried dry condensed pulver poudre polvo polvere poeder concentre" +
		" condensada condensato "
	notWords  wordList = " without no non not sans ohne kein keine sin senza zonder "
	richWords wordList = " breast human mother mothers donkey mare mares maternel maternelle materna anesse burra" +
		" asina "
)

// madeOf are German words whose ends tell what something is made of, and words for milks with much sugar.
var madeOfAlcohol, madeOfSugar = [...]string{"bier", "wein", "schnaps", "likor"},
	[...]string{
		"saft", "sirup", "honig", "zucker", "milchpulver", "molkepulver", "molkenpulver", "kondensmilch",
		"trockenmilch", "muttermilch", "eselsmilch", "stutenmilch",
	}

// thinJuices are of what has little sugar.
var thinJuices = [...]string{
	"aloe", "cucumber", "gurke", "concombre", "pepino", "lemon", "lime", "zitrone", "limette", "citron", "limon",
	"nettle", "celery",
}

// boilsOver tells by its name alone what something has in it that boils over in hot lye: alcohol, or over 5 % sugar. A
// name that may be that of a drink with or without it counts as one with it: the safer reading.
func boilsOver(name string) (alcohol, sugar bool) {
	words := names.Words(name)
	whole := strings.Join(words, " ")
	ends := func(word string, ends []string) bool {
		return slices.ContainsFunc(ends, func(end string) bool { return strings.HasSuffix(word, end) && word != "schwein" })
	}
	milk, dried, rich := false, false, false
	for i, word := range words {
		if i+1 < len(words) && absentBehind.has(words[i+1]) || i > 0 && notWords.has(words[i-1]) {
			continue // alcohol-free, without sugar
		}
		alcohol = alcohol || alcoholWords.has(word) || ends(word, madeOfAlcohol[:])
		sugar = sugar || sugarWords.has(word) || ends(word, madeOfSugar[:])
		milk, dried, rich = milk || milkWords.has(word), dried || driedWords.has(word), rich || richWords.has(word)
	}
	alcohol = alcohol || strings.Contains(whole, "witch hazel") || strings.Contains(whole, "vanilla extract")
	thin := slices.ContainsFunc(thinJuices[:], func(part string) bool { return strings.Contains(whole, part) })
	sugar = (sugar || milk && (dried || rich)) && !thin
	return alcohol, sugar
}
