package report

import (
	"embed"
	"html/template"
)

//go:embed assets
var assets embed.FS

// layout is the page: its text comes from words, its style and its script
// from the files beside it.
var layout = template.Must(template.New("page.gohtml").Funcs(template.FuncMap{
	"say":    func(name string) string { return say(name, nil) },
	"style":  func() template.CSS { return template.CSS(asset("style.css")) },
	"script": func() template.JS { return template.JS(asset("report.js")) },
}).ParseFS(assets, "assets/*.gohtml"))

// asset reads an embedded file; it is there, or the package would not compile into tests that pass.
func asset(name string) string {
	text, err := assets.ReadFile("assets/" + name)
	if err != nil {
		panic(err)
	}
	return string(text)
}
