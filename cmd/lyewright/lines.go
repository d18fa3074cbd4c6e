package main

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"io"
	"runtime"
	"runtime/debug"

	"example.com/lyewright/soap"
)

// How many lines are handed to a worker at a time, and at how many bytes no more
// are added. One by one, the hand-over costs as much as the work; by lines
// alone, long ones would fill the memory.
const (
	bundleLines = 64
	bundleBytes = 64 << 10
)

// bundle is a run of input lines and what becomes of them.
type bundle struct {
	lines   [][]byte
	first   int // the number of the first line
	answers chan []answer
}

// stream works formulas out a line each and prints the answers in order, with
// as many workers as there are processors and a bounded number of lines in
// memory.
func (c *command) stream(name string, input io.Reader, o batchOptions) int {
	// Little is alive at a time, so the collector would run every few formulas
	// and keep the processors waiting for it. It is let run behind, but not far.
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(32 << 20))
	workers := runtime.GOMAXPROCS(0)
	jobs := make(chan *bundle)
	order := make(chan *bundle, 2*workers)
	stop := make(chan struct{})
	defer close(stop)
	var readErr error
	go func() {
		defer close(order)
		defer close(jobs)
		readErr = bundles(input, func(b *bundle) bool {
			select {
			case order <- b:
				jobs <- b
				return true
			case <-stop:
				return false
			}
		})
	}()
	for range workers {
		go func() {
			for b := range jobs {
				b.answers <- b.work(func(line []byte) answer { return answerOf(line, o) })
			}
		}()
	}
	status := done
	out := bufio.NewWriterSize(c.stdout, 1<<16)
	inner := &command{stdout: out, stderr: c.stderr, json: c.json, printed: c.printed}
	for b := range order {
		for _, a := range <-b.answers {
			if status = max(status, inner.report(a, name, o)); inner.broken {
				c.broken = true
				return status
			}
		}
		if err := out.Flush(); err != nil {
			return c.cannotWrite(err)
		}
	}
	c.printed = inner.printed
	if readErr != nil {
		status = max(status, c.refuse(cmp.Or(name, "-"), refused(soap.Faults{unreadable(readErr)})))
	}
	return status
}

// bundles reads lines and hands them over by the bundle until hand wants no
// more. Whoever writes a line and waits for its answer gets it: a bundle goes
// as soon as nothing more has come.
func bundles(input io.Reader, hand func(*bundle) bool) error {
	reader := &lineReader{Reader: bufio.NewReaderSize(input, 1<<16)}
	b := &bundle{first: 1, answers: make(chan []answer, 1)}
	size := 0
	for {
		line, err := reader.next()
		if line != nil || err == nil {
			b.lines = append(b.lines, line)
			size += len(line)
		}
		if full := len(b.lines) == bundleLines || size >= bundleBytes || err != nil || reader.Buffered() == 0; full && len(b.lines) > 0 {
			if !hand(b) {
				return nil
			}
			b = &bundle{first: b.first + len(b.lines), answers: make(chan []answer, 1)}
			size = 0
		}
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// mostLine is how much is kept of a line: a byte more than the largest formula and
// the end of its line.
const mostLine = soap.MostBytes + len("\r\n") + 1

// lineReader reads lines, and of one that is too long no more than shows that it is.
// The rest is passed over when the next line is asked for, so that a line without
// an end is refused all the same.
type lineReader struct {
	*bufio.Reader
	amid bool // in a line of which the beginning was given
}

func (r *lineReader) next() ([]byte, error) {
	for r.amid {
		_, err := r.ReadSlice('\n')
		if r.amid = errors.Is(err, bufio.ErrBufferFull); !r.amid && err != nil {
			return nil, err
		}
	}
	var line []byte
	for {
		piece, err := r.ReadSlice('\n')
		line = append(line, piece[:min(len(piece), mostLine-len(line))]...)
		more := errors.Is(err, bufio.ErrBufferFull)
		if r.amid = more && len(line) == mostLine; r.amid {
			return line, nil
		}
		if !more {
			if err == nil {
				line[len(line)-1] = '\n' // whatever of it was dropped, it has ended
			}
			return line, err
		}
	}
}

// blanks are the white space of JSON: nothing else is passed over.
const blanks = " \t\r\n"

// blank reports whether a line holds nothing. Of a line that is too long that is
// not known.
func blank(line []byte) bool { return len(line) < mostLine && len(bytes.Trim(line, blanks)) == 0 }

// work answers the lines of a bundle, each by itself. Blank lines are passed over.
func (b *bundle) work(answerOf func(line []byte) answer) []answer {
	answers := make([]answer, 0, len(b.lines))
	for i, line := range b.lines {
		if !blank(line) {
			text := bytes.TrimSuffix(bytes.TrimSuffix(line, []byte("\n")), []byte("\r"))
			a := contained(func() answer { return answerOf(text) })
			a.line = b.first + i
			answers = append(answers, a)
		}
	}
	return answers
}

// peek looks whether standard input is one formula to a line: its first line
// that is not blank is a whole object, and more follows. It returns a reader of
// the whole, in which blank lines are kept by their number alone.
func peek(input io.Reader) (lines bool, all io.Reader, err error) {
	reader := &lineReader{Reader: bufio.NewReaderSize(input, 1<<16)}
	before, first, err := nextLine(reader)
	all = io.MultiReader(before, bytes.NewReader(first), reader)
	text := bytes.Trim(first, blanks)
	if err != nil || len(first) == mostLine || len(text) == 0 || text[0] != '{' || !json.Valid(text) {
		return false, all, ended(err)
	}
	between, second, err := nextLine(reader)
	return len(second) > 0, io.MultiReader(before, bytes.NewReader(first), between, bytes.NewReader(second), reader), ended(err)
}

// ended drops the error that only says that the input has ended.
func ended(err error) error {
	if errors.Is(err, io.EOF) {
		return nil
	}
	return err
}

// nextLine reads the next line that is not blank. The blank ones before it come
// back as a reader that makes them anew: however many, they take no room.
func nextLine(reader *lineReader) (before io.Reader, line []byte, err error) {
	for count := int64(0); ; count++ {
		line, err = reader.next()
		if err != nil || !blank(line) {
			if blank(line) {
				line = nil
			}
			return io.LimitReader(lineFeeds{}, count), line, err
		}
	}
}

// lineFeeds is an endless run of empty lines.
type lineFeeds struct{}

func (lineFeeds) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '\n'
	}
	return len(p), nil
}
