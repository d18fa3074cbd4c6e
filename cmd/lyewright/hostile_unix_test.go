//go:build unix

package main

import (
	"io"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// A pipe under a file's name: what its writer gets rid of is what is read, and
// what the system holds in between.
func TestAFileOfAHundredMegabytesIsRefusedAfterAMebibyte(t *testing.T) {
	const between = 1 << 16
	one := formulas + "/single-bar.json"
	for _, args := range [][]string{
		{"batch", "PIPE"}, {"batch", "-json", one, "PIPE"}, {"check", "PIPE"}, {"cap", "PIPE"}, {"tint", "PIPE"}, {"tint", "-swatches", "PIPE", one},
	} {
		path := filepath.Join(t.TempDir(), "pipe")
		if err := syscall.Mkfifo(path, 0o600); err != nil {
			t.Skip(err)
		}
		f := &flood{begin: `{"formula": "`, again: "lantern "}
		written := make(chan int64)
		go func() {
			pipe, err := os.OpenFile(path, os.O_WRONLY, 0)
			if err != nil {
				written <- floodBytes
				return
			}
			n, _ := io.CopyBuffer(struct{ io.Writer }{pipe}, f, make([]byte, 1<<12)) // ends when nobody reads on
			_ = pipe.Close()
			written <- n
		}()
		for i, arg := range args {
			if arg == "PIPE" {
				args[i] = path
			}
		}
		_, _, status := lyewright("", args...)
		if n := <-written; status != wrongInput || n > mostTaken+between {
			t.Errorf("%v: exit %d after %d bytes", args, status, n)
		}
	}
}
