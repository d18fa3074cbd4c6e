package soap_test

import (
	"bytes"
	"context"
	"encoding/json"
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

// The heaviest formula of each kind is answered as any other, with its batch; and where its client goes away before,
// the handler comes to an end as well, with nothing but a refusal.
func TestAHandlerAnswersTheHeaviestOfEachKind(t *testing.T) {
	for name, heavy := range heaviest {
		text := heavy.Text()
		serve := func(ctx context.Context) *httptest.ResponseRecorder {
			request := httptest.NewRequestWithContext(ctx, http.MethodPost, "/", bytes.NewReader(text))
			w := httptest.NewRecorder()
			batches{}.ServeHTTP(w, request)
			return w
		}
		var answered struct {
			Schema   string
			Findings []struct{ Code, Severity string }
		}
		w := serve(t.Context())
		if err := json.Unmarshal(w.Body.Bytes(), &answered); err != nil || w.Code != http.StatusOK ||
			answered.Schema != "batch/1" {
			t.Errorf("%s: %v, status %d, %.200s", name, err, w.Code, w.Body)
		}
		if n := len(answered.Findings); n == 0 || n > 200 {
			t.Errorf("%s: %d findings", name, n)
		}
		ctx, cancel := context.WithTimeout(t.Context(), time.Millisecond) // before it is read
		w = serve(ctx)
		cancel()
		if w.Code != http.StatusServiceUnavailable || !strings.Contains(w.Body.String(), `"error/1"`) {
			t.Errorf("%s, its client gone: status %d, %.200s", name, w.Code, w.Body)
		}
	}
}
