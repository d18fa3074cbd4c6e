package soap_test

import (
	"encoding/json"
	"strconv"
	"testing"
)

// 12 cups and 6 moulds are two batches, 13 and 6 three, 6 and 6 one: as many as the moulds are
// filled, and of one nothing is said.
func TestTheNumberOfBatchesIsInTheJSON(t *testing.T) {
	for cups, want := range map[int]int{1: 0, 6: 0, 7: 2, 12: 2, 13: 3} {
		b := plainFormula().with("size", `{"vessels": [{"vessel": "cup", "part": "lantern", "count": `+strconv.Itoa(cups)+
			`, "moulds": 6, "volume": "45 mL"}]}`,
			"parts", `{"part": "lantern"}`).batch(t)
		text, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		var out map[string]any
		if err := json.Unmarshal(text, &out); err != nil {
			t.Fatal(err)
		}
		n, written := out["batches"].(float64)
		if int(n) != want || written != (want > 0) {
			t.Errorf("%d cups in 6 moulds: batches %v, want %d", cups, out["batches"], want)
		}
	}
}
