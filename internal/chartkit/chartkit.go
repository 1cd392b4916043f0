package chartkit

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
)

//go:embed all:dist
var dist embed.FS

// ErrNoEngine says that this binary was built without the chart engine.
var ErrNoEngine = errors.New("this build carries no chart engine: run 'go generate ./internal/chartkit' (needs Node), or 'make build'")

// GzipJS is the chart engine: JavaScript that defines the global echarts,
// compressed with gzip. The error is ErrNoEngine where the build left it out.
func GzipJS() ([]byte, error) { return engineOf(dist) }

func engineOf(files fs.FS) ([]byte, error) {
	js, err := fs.ReadFile(files, "dist/echarts.js.gz")
	if errors.Is(err, fs.ErrNotExist) {
		return nil, ErrNoEngine
	}
	if err != nil {
		return nil, fmt.Errorf("the chart engine cannot be read: %w", err)
	}
	return js, nil
}
