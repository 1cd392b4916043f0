package report

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// tab is a page in a real browser, with everything that it complained of or
// asked the network for.
type tab struct {
	context.Context
	mu         sync.Mutex
	complaints []string
	requests   []string
}

// findChromium skips where there is no browser, except where skipping is forbidden.
func findChromium(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("CI") == "true" {
		t.Fatal("no Chromium found: install it, skipping is not allowed here")
	}
	t.Skip("no Chromium found")
	return ""
}

// openTab opens a page in a window of that size.
func openTab(t *testing.T, page string, width, height int64) *tab {
	t.Helper()
	b := newTab(t)
	b.do(t, chromedp.EmulateViewport(width, height), chromedp.Navigate("file://"+page))
	return b
}

func newTab(t *testing.T) *tab {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(findChromium(t)), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-domain-reliability", true),
		chromedp.Flag("no-pings", true))
	allocator, stop := chromedp.NewExecAllocator(t.Context(), options...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(allocator)
	t.Cleanup(cancel)
	ctx, expired := context.WithTimeout(ctx, 90*time.Second)
	t.Cleanup(expired)

	b := &tab{Context: ctx}
	if err := chromedp.Listen(ctx, b.hear); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(ctx, network.Enable, network.EnableParams{}); err != nil {
		t.Fatal(err)
	}
	return b
}

func (b *tab) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		b.requests = append(b.requests, e.Request.URL)
	case *runtime.EventExceptionThrown:
		b.complaints = append(b.complaints, fmt.Sprint("exception: ", e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
	case *runtime.EventConsoleAPICalled:
		b.complaints = append(b.complaints, fmt.Sprint("console: ", e.Type, e.Args))
	}
}

func (b *tab) do(t *testing.T, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(b, steps...); err != nil {
		t.Fatal(err)
	}
}

func ask[T any](t *testing.T, b *tab, expression string) T {
	t.Helper()
	answer, err := chromedp.Run(b, chromedp.Evaluate[T](expression))
	if err != nil {
		t.Fatalf("%s: %v", expression, err)
	}
	return answer
}

// drawn waits until the page says that all charts are drawn.
func (b *tab) drawn(t *testing.T) {
	t.Helper()
	const all = `document.documentElement.dataset.drawn === String(document.querySelectorAll(".chart").length)`
	if _, err := chromedp.Run(b, chromedp.Poll[bool](all, chromedp.WithPollingTimeout(30*time.Second))); err != nil {
		b.mu.Lock()
		defer b.mu.Unlock()
		t.Fatalf("the charts were not drawn: %v\n%s", err, strings.Join(b.complaints, "\n"))
	}
}

// quiet fails if the page asked for anything but itself or complained.
func (b *tab) quiet(t *testing.T) {
	t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for i, url := range b.requests {
		if i > 0 || !strings.HasPrefix(url, "file://") {
			t.Errorf("the page asked for %.80s", url)
		}
	}
	if len(b.requests) == 0 {
		t.Error("not even the page itself was asked for: the listener does not work")
	}
	for _, c := range b.complaints {
		t.Error(c)
	}
}

func (b *tab) scheme(t *testing.T, scheme string) {
	t.Helper()
	_, err := chromedp.Call(b.Context, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
	})
	if err != nil {
		t.Fatal(err)
	}
}

// picture keeps a screenshot of the whole page where PICTURES names a folder.
func (b *tab) picture(t *testing.T, name string) {
	t.Helper()
	folder := os.Getenv("PICTURES")
	if folder == "" {
		return
	}
	png, err := chromedp.Run(b, chromedp.FullScreenshot(100))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, name+".png"), png, 0o600); err != nil {
		t.Fatal(err)
	}
}

// written writes a report to a file of its own.
func written(t *testing.T, in Page) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "report.html")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := HTML(f, in); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return name
}
