package chartkit

import (
	"bytes"
	"compress/gzip"
	"errors"
	"io"
	"os"
	"strings"
	"testing"
	"testing/fstest"
)

func TestABuildWithoutTheEngineSaysHowToGetIt(t *testing.T) {
	_, err := engineOf(fstest.MapFS{"dist/README": {Data: []byte("x")}})
	if !errors.Is(err, ErrNoEngine) {
		t.Fatalf("error = %v, want %v", err, ErrNoEngine)
	}
	if !strings.Contains(err.Error(), "go generate ./internal/chartkit") {
		t.Errorf("the error does not say what to run: %v", err)
	}
}

func TestTheEngineIsJavaScriptWithItsLicences(t *testing.T) {
	packed, err := GzipJS()
	if errors.Is(err, ErrNoEngine) && os.Getenv("CI") != "true" {
		t.Skip(err)
	}
	if err != nil {
		t.Fatal(err)
	}
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	js, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"globalThis.echarts=", "Apache License", "BSD 3-Clause"} {
		if !bytes.Contains(js, []byte(want)) {
			t.Errorf("the engine lacks %q", want)
		}
	}
	if bytes.Contains(js, []byte("</script")) {
		t.Error("the engine would end the script element that holds it")
	}
}

// Addresses in the lock file would tie the build to one registry; without the
// hashes it would not notice another package under the same name.
func TestTheLockFileHasHashesAndNoAddresses(t *testing.T) {
	lock, err := os.ReadFile("web/package-lock.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, never := range []string{`"resolved"`, "http://", "https://"} {
		if bytes.Contains(lock, []byte(never)) {
			t.Errorf("package-lock.json contains %s", never)
		}
	}
	packages := bytes.Count(lock, []byte(`"node_modules/`))
	if hashes := bytes.Count(lock, []byte(`"integrity"`)); hashes != packages {
		t.Errorf("%d hashes for %d packages", hashes, packages)
	}
}
