package soap_test

import (
	"bytes"
	"context"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"
)

// A shop that works at two batches at a time: clients with the heaviest formulas that go away
// free their slots, and the next maker is served.
func TestClientsThatHaveGoneFreeTheirSlots(t *testing.T) {
	slots := make(chan struct{}, 2)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		select {
		case slots <- struct{}{}:
			defer func() { <-slots }()
			batches{}.ServeHTTP(w, r)
		case <-r.Context().Done():
		}
	}))
	defer server.Close()
	heavy := heaviest["loads to be matched, carriers held back"].Text()
	gone := make(chan struct{}, 20)
	for range cap(gone) {
		go func() {
			defer func() { gone <- struct{}{} }()
			ctx, cancel := context.WithTimeout(context.Background(), 150*time.Millisecond)
			defer cancel()
			request, err := http.NewRequestWithContext(ctx, http.MethodPost, server.URL, bytes.NewReader(heavy))
			if err != nil {
				t.Error(err)
				return
			}
			request.Header.Set("Content-Type", "application/json")
			if response, err := http.DefaultClient.Do(request); err == nil {
				_ = response.Body.Close()
			}
		}()
	}
	for range cap(gone) {
		<-gone
	}
	// Worked out to their ends, twenty of them would take two slots for many seconds.
	begun := time.Now()
	status, _, _, err := post(http.DefaultClient, server.URL, "application/json", strings.NewReader(plainFormula().text()))
	if took := time.Since(begun); err != nil || status != http.StatusOK || took > 3*time.Second {
		t.Errorf("%v, status %d, after %v", err, status, took)
	}
}
