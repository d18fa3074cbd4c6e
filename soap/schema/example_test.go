package schema_test

import (
	"encoding/json"
	"fmt"

	"example.com/lyewright/soap/schema"
)

func ExampleNames() {
	for _, name := range schema.Names() {
		fmt.Println(name)
	}
	// Output:
	// batch/1
	// cap/1
	// colourants/1
	// error/1
	// formula/1
	// fragrance/1
	// lye-acids/1
	// lye-density/1
	// lye-heat/1
	// lye-stock/1
	// lye-titration/1
	// oils/1
	// swatches/1
	// tint/1
}

// A schema is a JSON text: hand it to a validator, or read it.
func ExampleOf() {
	text, err := schema.Of("error/1")
	if err != nil {
		fmt.Println(err)
		return
	}
	var s struct {
		Title      string
		Required   []string
		Properties map[string]struct{ Description string }
	}
	if err := json.Unmarshal(text, &s); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Title)
	for _, key := range s.Required {
		fmt.Println(key+":", s.Properties[key].Description)
	}
	_, err = schema.Of("eror/1")
	fmt.Println(err)
	// Output:
	// What is wrong, version 1
	// schema: The name of this schema.
	// errors: All that is wrong, in the order of the file.
	// "eror/1" is not the name of a schema; did you mean error/1?
}
