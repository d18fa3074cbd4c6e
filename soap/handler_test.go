package soap_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"runtime/pprof"
	"strings"
	"sync"
	"testing"
	"time"
	"unicode"

	"example.com/lyewright/soap"
)

// A posted is a formula and what a handler must answer: worked out alone, without one.
type posted struct {
	name   string
	text   []byte
	status int
	want   []byte
}

// alone works a formula out without any handler.
func alone(t *testing.T, name string, text []byte) posted {
	t.Helper()
	formula, err := soap.ReadFormula(bytes.NewReader(text))
	var batch soap.Batch
	if err == nil {
		batch, err = formula.Batch()
	}
	p := posted{name: name, text: text, status: http.StatusOK}
	if err == nil {
		p.want, err = batch.MarshalJSON()
	} else {
		p.status = http.StatusUnprocessableEntity
		if errors.Is(err, soap.ErrFormat) || errors.Is(err, soap.ErrLimit) {
			p.status = http.StatusBadRequest
		}
		p.want, err = faultsOf(t, err).MarshalJSON()
	}
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// postings gives the formulas of the testdata, right and wrong ones. Those that take far
// longer than the others stay out: the long ones, and those whose loads are looked for.
func postings(t *testing.T) (list []posted) {
	t.Helper()
	for _, pattern := range []string{"formulas/*.json", "formulas/wrong/*.json", "worked/*.json"} {
		paths, err := filepath.Glob("../testdata/" + pattern)
		if err != nil || len(paths) < 10 {
			t.Fatal(pattern, len(paths), err)
		}
		for _, path := range paths {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if len(text) < 8<<10 && !bytes.Contains(text, []byte(`"match"`)) {
				list = append(list, alone(t, path, text))
			}
		}
	}
	return list
}

// goroutinesLeft waits until no more goroutines run than before, and says which do.
func goroutinesLeft(t *testing.T, before int) {
	t.Helper()
	for range 200 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(25 * time.Millisecond)
	}
	var profile strings.Builder
	_ = pprof.Lookup("goroutine").WriteTo(&profile, 1)
	t.Errorf("%d goroutines, %d before:\n%s", runtime.NumGoroutine(), before, profile.String())
}

// Sixteen clients at once on connections of their own, and every answer is the one that
// the same formula has alone, to the last byte. When they have gone, nothing runs on.
func TestTenThousandRequestsAreAnsweredAsOneAlone(t *testing.T) {
	const requests, clients = 10_000, 16
	list := postings(t)
	statuses := map[int]int{}
	for _, p := range list {
		statuses[p.status]++
	}
	for _, status := range []int{http.StatusOK, http.StatusBadRequest, http.StatusUnprocessableEntity} {
		if statuses[status] < 5 {
			t.Fatalf("%v: too few with status %d", statuses, status)
		}
	}
	before := runtime.NumGoroutine()
	server := httptest.NewServer(batches{})
	var group sync.WaitGroup
	for client := range clients {
		group.Go(func() {
			transport := &http.Transport{}
			defer transport.CloseIdleConnections()
			c := &http.Client{Transport: transport, Timeout: time.Minute}
			for i := client; i < requests; i += clients {
				p := &list[i*7%len(list)]
				status, kind, got, err := post(c, server.URL, "application/json", bytes.NewReader(p.text))
				if err != nil || status != p.status || kind != "application/json" || !bytes.Equal(got, p.want) {
					t.Errorf("%s: %v, status %d, %s, %.200s; want %d, %.200s", p.name, err, status, kind, got, p.status, p.want)
					return
				}
			}
		})
	}
	group.Wait()
	server.Close()
	goroutinesLeft(t, before)
}

func post(c *http.Client, url, kind string, body io.Reader) (status int, answered string, text []byte, err error) {
	response, err := c.Post(url, kind, body)
	if err != nil {
		return 0, "", nil, err
	}
	text, err = io.ReadAll(response.Body)
	return response.StatusCode, response.Header.Get("Content-Type"), text, errors.Join(err, response.Body.Close())
}

// countedBody counts what a handler reads of a request.
type countedBody struct {
	io.ReadCloser
	read int
}

func (b *countedBody) Read(p []byte) (int, error) {
	n, err := b.ReadCloser.Read(p)
	b.read += n
	return n, err
}

// counting serves with what was read of the last request.
func counting(read chan<- int) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body := &countedBody{ReadCloser: r.Body}
		r.Body = body
		batches{}.ServeHTTP(w, r)
		read <- body.read
	})
}

// mustBeError checks an answer that refuses: one error/1 object that names the fault,
// of bounded length, with nothing in it that does something to a screen.
func mustBeError(t *testing.T, name string, text []byte, want string) {
	t.Helper()
	var answer struct {
		Schema string
		Errors []map[string]any
	}
	if err := json.Unmarshal(text, &answer); err != nil || answer.Schema != "error/1" || len(answer.Errors) != 1 {
		t.Errorf("%s: %v in %.300s", name, err, text)
		return
	}
	for _, key := range []string{"path", "text", "reason", "remedy"} {
		if _, there := answer.Errors[0][key].(string); !there {
			t.Errorf("%s: no %s in %.300s", name, key, text)
		}
	}
	if strings.ContainsFunc(string(text), func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) }) {
		t.Errorf("%s: something in it does something to a screen: %.300q", name, text)
	}
	if !strings.Contains(fmt.Sprint(answer.Errors[0]["reason"]), want) || len(text) > 2000 {
		t.Errorf("%s: %d bytes, %.300s; want %q", name, len(text), text, want)
	}
	if bytes.ContainsFunc(text, func(r rune) bool { return r < ' ' }) {
		t.Errorf("%s: %q", name, text)
	}
}

// Whatever is posted, the answer is one clean error, no more than a mebibyte and a byte
// is read for it, and the next maker is served.
func TestHostileBodiesHaveCleanErrors(t *testing.T) {
	before := runtime.NumGoroutine()
	read := make(chan int, 1)
	server := httptest.NewServer(counting(read))
	good := plainFormula()
	named := func(name string) io.Reader {
		return strings.NewReader(strings.Replace(good.text(), "Lantern walk", name, 1))
	}
	oils := `{"oils": [` + strings.TrimSuffix(strings.Repeat(`{"oil": "olive", "share": "0.01 %"},`, 10_000), ",") + `]}`
	for _, test := range []struct {
		name   string
		body   io.Reader
		status int
		says   string
	}{
		{"nothing", strings.NewReader(""), 400, "is empty"},
		{"blanks", strings.NewReader(strings.Repeat(" \n", 1000)), 400, "is empty"},
		{"a hundred megabytes", io.LimitReader(&endless{with: ' '}, 100_000_000), 413, "is larger than 1 MiB"},
		{"a hundred megabytes of brackets", io.LimitReader(&endless{with: '['}, 100_000_000), 413, "is larger than 1 MiB"},
		{"a byte more than a mebibyte", io.LimitReader(&endless{with: ' '}, soap.MostBytes+1), 413, "is larger than 1 MiB"},
		{"a mebibyte", io.LimitReader(&endless{with: ' '}, soap.MostBytes), 400, "is empty"},
		{"a formula cut off", strings.NewReader(good.text()[:200]), 400, "ends too early"},
		{"deep nesting", strings.NewReader(strings.Repeat("[", 100_000)), 400, "is nested too deeply"},
		{"deep objects", strings.NewReader(strings.Repeat(`{"a":`, 100_000)), 400, "is nested too deeply"},
		{"bytes that are no UTF-8", named("Lantern \xff\xfe walk"), 400, "is not UTF-8 here"},
		{"a NUL byte", named("Lantern\x00walk"), 400, "is not JSON here"},
		{"an escaped NUL", named(`Lantern\u0000walk`), 422, "has a control character"},
		{"a bidirectional control", named("Lantern \u202eklaw"), 422, "has a bidirectional control"},
		{"a line separator", named("Lantern\u2028walk"), 422, "has a line separator"},
		{"a control in a key", strings.NewReader(`{"\u001b[2J": 1}`), 400, "has a key with a control character"},
		{"ten thousand oils", strings.NewReader(oils), 400, "has more than 500 items"},
		{"a picture", strings.NewReader("\x89PNG\r\n\x1a\n"), 400, "is not UTF-8 here"},
		{"a page", strings.NewReader("<!DOCTYPE html><script>alert(1)</script>"), 400, "is not JSON here"},
		{"a form", strings.NewReader("formula=Lantern+walk"), 400, "is not JSON here"},
		{"two formulas", strings.NewReader(good.text() + "\n" + good.text()), 400, "has more after its end"},
		{"a list", strings.NewReader("[]"), 400, "is a list where a formula is needed"},
	} {
		transport := &http.Transport{}
		client := &http.Client{Transport: transport, Timeout: time.Minute}
		status, kind, text, err := post(client, server.URL, "application/json", test.body)
		if err != nil || status != test.status || kind != "application/json" {
			t.Errorf("%s: %v, status %d, want %d, %s", test.name, err, status, test.status, kind)
		} else {
			mustBeError(t, test.name, text, test.says)
		}
		if n := <-read; n > soap.MostBytes+1 {
			t.Errorf("%s: %d bytes were read", test.name, n)
		}
		if status, _, _, err := post(client, server.URL, "application/json; charset=utf-8", strings.NewReader(good.text())); err != nil || status != http.StatusOK {
			t.Errorf("after %s: %v, status %d", test.name, err, status)
		}
		<-read
		transport.CloseIdleConnections()
	}
	server.Close()
	goroutinesLeft(t, before)
}

// What is asked in another way is refused before anything is read.
func TestOnlyPostedJSONIsRead(t *testing.T) {
	for _, test := range []struct {
		method, kind string
		status       int
		says         string
	}{
		{http.MethodGet, "", 405, "no formula is posted"},
		{http.MethodPut, "application/json", 405, "no formula is posted"},
		{http.MethodDelete, "", 405, "no formula is posted"},
		{http.MethodPost, "text/html", 415, "is said to be something other than JSON"},
		{http.MethodPost, "multipart/form-data; boundary=lantern", 415, "is said to be something other than JSON"},
		{http.MethodPost, "application/json; \u202e", 415, "is said to be something other than JSON"},
	} {
		request := httptest.NewRequest(test.method, "/", &mustNotBeRead{t})
		if test.kind != "" {
			request.Header.Set("Content-Type", test.kind)
		}
		w := httptest.NewRecorder()
		batches{}.ServeHTTP(w, request)
		if w.Code != test.status || w.Header().Get("Content-Type") != "application/json" || (w.Header().Get("Allow") == "POST") != (test.status == 405) {
			t.Errorf("%s %s: status %d, %v", test.method, test.kind, w.Code, w.Header())
		}
		mustBeError(t, test.method, w.Body.Bytes(), test.says)
	}
	// without a type it is taken at its word
	w := httptest.NewRecorder()
	if batches.ServeHTTP(batches{}, w, httptest.NewRequest(http.MethodPost, "/", strings.NewReader(plainFormula().text()))); w.Code != http.StatusOK {
		t.Errorf("without a type: status %d", w.Code)
	}
}

type mustNotBeRead struct{ t *testing.T }

func (r *mustNotBeRead) Read([]byte) (int, error) {
	r.t.Error("the body is read")
	return 0, io.EOF
}

func TestWhereTheTimeIsOverNothingIsDone(t *testing.T) {
	over, cancel := context.WithCancel(context.Background())
	cancel()
	late, cancel := context.WithDeadline(context.Background(), time.Now().Add(-time.Second))
	defer cancel()
	for _, ctx := range []context.Context{over, late} {
		w := httptest.NewRecorder()
		batches{}.ServeHTTP(w, httptest.NewRequest(http.MethodPost, "/", &mustNotBeRead{t}).WithContext(ctx))
		if w.Code != http.StatusServiceUnavailable {
			t.Errorf("status %d", w.Code)
		}
		mustBeError(t, "over", w.Body.Bytes(), "no time is left")
	}
}

// A sender that never comes to an end is answered when the request's time is over, and
// does not hold a goroutine longer.
func TestASlowBodyIsReadForAsLongAsItsContextLasts(t *testing.T) {
	before := runtime.NumGoroutine()
	within := func(limit time.Duration) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			ctx, cancel := context.WithTimeout(r.Context(), limit)
			defer cancel()
			batches{}.ServeHTTP(w, r.WithContext(ctx))
		})
	}
	server := httptest.NewServer(within(100 * time.Millisecond))
	body, sender := io.Pipe()
	go func() { _, _ = io.WriteString(sender, `{"formula": "Lantern`) }() // and then no more
	transport := &http.Transport{}
	began := time.Now()
	// Were it held for good, the sender would be waited for: it is cut off, and that is said.
	held := time.AfterFunc(20*time.Second, func() { _ = sender.CloseWithError(errors.New("held too long")) })
	defer held.Stop()
	status, _, text, err := post(&http.Client{Transport: transport, Timeout: time.Minute}, server.URL, "application/json", body)
	if err != nil || status != http.StatusRequestTimeout {
		t.Errorf("%v, status %d", err, status)
	} else {
		mustBeError(t, "slow", text, "did not come in time")
	}
	if took := time.Since(began); took > 20*time.Second {
		t.Errorf("answered after %v", took)
	}
	_ = sender.Close()
	transport.CloseIdleConnections()
	server.Close()
	goroutinesLeft(t, before)
}

// A connection that ends in the middle of a formula: the half that still listens is told
// so, the one that has gone is forgotten.
func TestABodyCutOffIsNoFormula(t *testing.T) {
	before := runtime.NumGoroutine()
	server := httptest.NewServer(batches{})
	const begun = "POST / HTTP/1.1\r\nHost: hall\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{\"formula\": \"Lantern"
	for _, listens := range []bool{true, false} {
		connection, err := net.Dial("tcp", server.Listener.Addr().String())
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(connection, begun); err != nil {
			t.Fatal(err)
		}
		if listens {
			if err := connection.(*net.TCPConn).CloseWrite(); err != nil {
				t.Fatal(err)
			}
			answer, err := io.ReadAll(connection)
			_, text, _ := bytes.Cut(answer, []byte("\r\n\r\n"))
			if err != nil || !bytes.HasPrefix(answer, []byte("HTTP/1.1 400 ")) {
				t.Errorf("%v, %.200q", err, answer)
			}
			mustBeError(t, "cut off", text, "cannot be read to its end")
		}
		if err := connection.Close(); err != nil {
			t.Error(err)
		}
	}
	server.Close()
	goroutinesLeft(t, before)
}
