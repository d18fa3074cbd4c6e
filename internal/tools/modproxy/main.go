// Command modproxy lays out a module as a file-system module proxy serves it, so that
// a module of its own can fetch it as it would a published one. From a directory, a
// version and the directory of the proxy it makes
//
//	PROXY/example.com/lyewright/@v/list, VERSION.info, VERSION.mod, VERSION.zip
//
// The zip is made by the rules of the go command: a module within the module is not in
// it.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"golang.org/x/mod/modfile"
	"golang.org/x/mod/module"
	"golang.org/x/mod/zip"
)

func main() {
	if len(os.Args) != 4 {
		fmt.Fprintln(os.Stderr, "usage: modproxy DIRECTORY VERSION PROXY")
		os.Exit(2)
	}
	if err := layOut(os.Args[1], os.Args[2], os.Args[3]); err != nil {
		fmt.Fprintln(os.Stderr, "modproxy:", err)
		os.Exit(1)
	}
}

func layOut(dir, version, proxy string) error {
	mod, err := os.ReadFile(filepath.Join(dir, "go.mod"))
	if err != nil {
		return err
	}
	m := module.Version{Path: modfile.ModulePath(mod), Version: version}
	if err := module.Check(m.Path, m.Version); err != nil {
		return err
	}
	path, err := module.EscapePath(m.Path)
	if err != nil {
		return err
	}
	info, err := json.Marshal(map[string]string{"Version": version})
	if err != nil {
		return err
	}
	at := filepath.Join(proxy, filepath.FromSlash(path), "@v")
	if err := os.MkdirAll(at, 0o755); err != nil {
		return err
	}
	for name, text := range map[string][]byte{"list": []byte(version + "\n"), version + ".info": info, version + ".mod": mod} {
		if err := os.WriteFile(filepath.Join(at, name), text, 0o644); err != nil {
			return err
		}
	}
	file, err := os.Create(filepath.Join(at, version+".zip"))
	if err != nil {
		return err
	}
	return errors.Join(zip.CreateFromDir(file, m, dir), file.Close())
}
