package report

import (
	"encoding/json"
	"html/template"

	"github.com/go-echarts/go-echarts/v2/charts"
	"github.com/go-echarts/go-echarts/v2/opts"
	"github.com/go-echarts/go-echarts/v2/types"
)

// An option is pure data. Text of the form "fn:NAME" stands for a function of
// assets/report.js, "colour:NAME" for a colour of the page in its present
// theme, and "state:NAME" for colour and pattern of a state.

// drawable is any chart of the option builder.
type drawable interface {
	Validate()
	JSON() map[string]any
}

// optionOf marshals the option of a chart. The builder's own rendering is not
// used, because it does not escape; json escapes <, > and &.
func optionOf(c drawable) (template.JS, error) {
	c.Validate()
	option := c.JSON()
	for _, unused := range []string{"title", "toolbox"} {
		delete(option, unused)
	}
	text, err := json.Marshal(option)
	return template.JS(text), err
}

// frame is what all charts have in common: the text for who does not see the
// chart, and tips that say the name of what is pointed at.
func frame(aria string) []charts.GlobalOpts {
	return []charts.GlobalOpts{
		charts.WithAnimation(false),
		charts.WithAriaOpts(&opts.Aria{
			Enabled: opts.Bool(true),
			Label:   &opts.AriaLabel{Enabled: opts.Bool(true), Description: aria},
		}),
		charts.WithTooltipOpts(opts.Tooltip{Show: opts.Bool(true), Trigger: "item", Formatter: "fn:tip"}),
	}
}

func legendOf(names ...string) charts.GlobalOpts {
	return charts.WithLegendOpts(opts.Legend{
		Show: opts.Bool(true), Type: "plain", Data: names, Top: "0", Left: "0",
	})
}

func noLegend() charts.GlobalOpts {
	return charts.WithLegendOpts(opts.Legend{Show: opts.Bool(false)})
}

// plot is the area between the axes; labels of axes find room by themselves.
func plot(top, right, bottom string) charts.GlobalOpts {
	return charts.WithGridOpts(opts.Grid{Left: "4", Right: right, Top: top, Bottom: bottom, ContainLabel: opts.Bool(true)})
}

// valueAxis is a horizontal axis of numbers with its unit below it.
func valueAxis(name string, format types.FuncStr) opts.XAxis {
	return opts.XAxis{
		Type: "value", Name: name, NameLocation: "middle", NameGap: 28,
		AxisLabel: &opts.AxisLabel{Formatter: format, HideOverlap: opts.Bool(true)},
	}
}

// names is a vertical axis of names, the first on top.
func names(of []string) opts.YAxis {
	return opts.YAxis{
		Type: "category", Data: of, Inverse: opts.Bool(true),
		AxisLabel: &opts.AxisLabel{Show: opts.Bool(true), Formatter: "fn:plain"},
	}
}

// drawn is a custom series: value is handed to the function of that name.
func drawn(function string, x, y any) charts.SeriesOpts {
	return charts.WithSeriesOpts(func(s *charts.SingleSeries) {
		s.RenderItem = types.FuncStr("fn:" + function)
		s.Encode = &opts.Encode{X: x, Y: y}
	})
}

func colour(name string) charts.SeriesOpts {
	return charts.WithItemStyleOpts(opts.ItemStyle{Color: "colour:" + name})
}

func stateColour(l stateLook) charts.SeriesOpts {
	return charts.WithItemStyleOpts(opts.ItemStyle{Color: "state:" + l.Key})
}

// described is the text of a chart for who does not see it.
func described(heading string) string { return say("aria", facts{"Heading": heading}) }
