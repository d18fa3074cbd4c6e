package soap_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"net/http/httptest"
	"os"
	"strconv"
	"strings"
	"time"

	"example.com/lyewright/soap"
)

// batches answers a posted formula with its batch, as a shop's back end does. What an
// answer means:
//
//	200  a batch/1 object. A batch that could hurt someone is a batch all the same:
//	     its findings say so, dangers first, and only they do. A header could be lost
//	     on the way, and whoever looks at headers alone would take that for safety
//	400  not a formula in form: no JSON, or a number where a text is needed
//	405  not posted
//	408  the formula did not come in time
//	413  more than 1 MiB
//	415  said to be something other than JSON
//	422  a formula in form with faults: a name that is not known, shares that do not
//	     add up, what no pot can make
//	503  no time was left to begin, or to come to an end
//
// All but 200 carry an error/1 object. Nothing is kept between requests, and a handler
// may serve any number at once.
//
// The request's time bounds the wait for the formula and the work on it: where it ends, as it
// does when the client has gone, the work stops within 10 ms. A simple batch takes some tens
// of microseconds, a part whose six loads are looked for in swatches of 71 bands some 10 ms,
// and the heaviest formula that is accepted up to a second: whoever serves strangers bounds
// how many run at once.
type batches struct{}

func (batches) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodPost {
		w.Header().Set("Allow", http.MethodPost)
		refuse(w, http.StatusMethodNotAllowed, soap.Fault{Reason: "no formula is posted", Remedy: "use POST"})
		return
	}
	if given := r.Header.Get("Content-Type"); given != "" {
		if kind, _, err := mime.ParseMediaType(given); err != nil || kind != "application/json" {
			refuse(w, http.StatusUnsupportedMediaType, soap.Fault{
				Reason: "is said to be something other than JSON",
				Remedy: "send it as application/json",
			})
			return
		}
	}
	if r.Context().Err() != nil {
		refuse(w, http.StatusServiceUnavailable, soap.Fault{Reason: "no time is left", Remedy: "send it again"})
		return
	}
	formula, err := readInTime(w, r)
	if err != nil {
		refuseFormula(w, err)
		return
	}
	batch, err := formula.BatchContext(r.Context())
	if err != nil {
		refuseFormula(w, err)
		return
	}
	text, err := batch.MarshalJSON()
	if err != nil {
		refuse(w, http.StatusInternalServerError, soap.Fault{
			Reason: "the batch cannot be written",
			Remedy: "tell whoever runs this",
		})
		return
	}
	answer(w, http.StatusOK, text)
}

// readInTime reads a formula of at most 1 MiB for as long as the request's context
// lasts: when that is over, a read that still waits for the sender ends, too.
func readInTime(w http.ResponseWriter, r *http.Request) (soap.Formula, error) {
	connection := http.NewResponseController(w)
	stop := context.AfterFunc(r.Context(), func() {
		_ = connection.SetReadDeadline(time.Now()) // what is no connection does not wait either
	})
	defer stop()
	return soap.ReadFormula(http.MaxBytesReader(w, r.Body, soap.MostBytes))
}

// refuseFormula says what is wrong with a formula, under the status that fits.
func refuseFormula(w http.ResponseWriter, err error) {
	var tooLarge *http.MaxBytesError
	var faults soap.Faults
	switch {
	case errors.As(err, &faults) && (errors.Is(err, soap.ErrFormat) || errors.Is(err, soap.ErrLimit)):
		refuse(w, http.StatusBadRequest, faults...)
	case faults != nil:
		refuse(w, http.StatusUnprocessableEntity, faults...)
	case errors.As(err, &tooLarge):
		refuse(w, http.StatusRequestEntityTooLarge, soap.Fault{
			Reason: "is larger than 1 MiB",
			Remedy: "a formula needs a few thousand bytes",
		})
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		refuse(w, http.StatusServiceUnavailable, soap.Fault{
			Reason: "no time was left to work it out",
			Remedy: "send it again",
		})
	case errors.Is(err, os.ErrDeadlineExceeded):
		w.Header().Set("Connection", "close") // the rest of the formula is not waited for
		refuse(w, http.StatusRequestTimeout, soap.Fault{Reason: "did not come in time", Remedy: "send it again"})
	default: // cut off on the way
		refuse(w, http.StatusBadRequest, soap.Fault{Reason: "cannot be read to its end", Remedy: "send it again"})
	}
}

// refuse answers with an error/1 object.
func refuse(w http.ResponseWriter, status int, faults ...soap.Fault) {
	text, err := soap.Faults(faults).MarshalJSON()
	if err != nil {
		status, text = http.StatusInternalServerError, []byte(`{"schema":"error/1","errors":[]}`)
	}
	answer(w, status, text)
}

// answer writes an object of JSON. That the other end has gone is nobody's loss.
func answer(w http.ResponseWriter, status int, text []byte) {
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Content-Length", strconv.Itoa(len(text)))
	w.Header().Set("X-Content-Type-Options", "nosniff")
	w.WriteHeader(status)
	_, _ = w.Write(text)
}

// The handler behind a server, asked for a batch and for one that cannot be. The 131.3 g
// are those of the example of Formula.Batch, where they are worked out by hand.
func Example_handler() {
	server := httptest.NewServer(batches{})
	defer server.Close()
	for _, superfat := range []string{"5 %", "5"} {
		response, err := http.Post(server.URL, "application/json", strings.NewReader(`{
		  "formula": "Lantern walk bars",
		  "oils": [{"oil": "hall-blend", "share": "100 %", "saponification": {"low": "188", "high": "192"}}],
		  "alkali": [{"kind": "sodium-hydroxide", "purity": {"low": "97 %", "high": "99 %"}}],
		  "superfat": "`+superfat+`",
		  "water": {"per_alkali": "2"},
		  "size": {"oils": "1000 g"}
		}`))
		if err != nil {
			fmt.Println(err)
			return
		}
		text, err := io.ReadAll(response.Body)
		if err := errors.Join(err, response.Body.Close()); err != nil {
			fmt.Println(err)
			return
		}
		var answer struct {
			Schema string
			Alkali []struct {
				Kind  string
				Grams json.Number `json:"weigh_g"`
			}
			Errors []struct{ Path, Text, Reason string }
		}
		if err := json.Unmarshal(text, &answer); err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(response.Status, answer.Schema)
		for _, a := range answer.Alkali {
			fmt.Println("weigh", a.Grams, "g of", a.Kind)
		}
		for _, e := range answer.Errors {
			fmt.Printf("%s: %q %s\n", e.Path, e.Text, e.Reason)
		}
	}
	// Output:
	// 200 OK batch/1
	// weigh 131.3 g of sodium-hydroxide
	// 422 Unprocessable Entity error/1
	// superfat: "5" has no unit
}
