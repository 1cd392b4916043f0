"use strict";
// Unpacks the chart engine, binds the options (pure data) to colours and
// functions of this page, and draws. Texts come from the data, never from here.
{
  const root = document.documentElement;
  root.classList.add("scripted");
  const narrowBelow = 520;
  const paperWidth = 640;

  const colour = (name) => getComputedStyle(root).getPropertyValue("--" + name).trim();
  const escape = (text) => String(text).replace(/[&<>"']/g, (c) => "&#" + c.charCodeAt(0) + ";");
  const group = (value) => {
    if (Math.abs(value) < 1e-9) return "0";
    const [head, tail] = String(Number(Number(value).toPrecision(12))).replace("-", "\u2212").split(".");
    return head.replace(/\B(?=(\d{3})+$)/g, "\u202f") + (tail ? "." + tail : "");
  };
  const two = (n) => String(n).padStart(2, "0");
  const clock = (seconds, fine) => {
    const s = Math.round(seconds);
    return Math.floor(s / 3600) + ":" + two(Math.floor(s / 60) % 60) + (fine || s % 60 ? ":" + two(s % 60) : "");
  };

  const patterns = () => ({
    starved: { symbol: "circle", symbolSize: 0.55, color: "rgba(0,0,0,.3)", dashArrayX: [[6, 6], [0, 6, 6, 0]], dashArrayY: [5, 0] },
    blocked: { symbol: "rect", color: "rgba(0,0,0,.3)", dashArrayX: [1, 0], dashArrayY: [1.5, 5], rotation: Math.PI / 6 },
    waiting: { symbol: "rect", color: colour("waiting"), dashArrayX: [1, 0], dashArrayY: [4, 4], rotation: -Math.PI / 4 },
  });
  const stateStyle = (key) => {
    const onPaper = key === "waiting" || key === "off-shift";
    const style = { color: onPaper ? colour("paper") : colour(key), decal: patterns()[key] };
    if (onPaper) Object.assign(style, { borderColor: colour(key === "waiting" ? key : "rule"), borderWidth: 1 });
    return style;
  };

  const inside = (p, from, to) => {
    const left = Math.max(from, p.coordSys.x), right = Math.min(to, p.coordSys.x + p.coordSys.width);
    return right > left ? [left, right] : null;
  };
  const functions = {
    plain: (v) => String(v),
    number: (v) => group(v),
    rounded: (p) => group(Math.round(Array.isArray(p.value) ? p.value[1] : p.value)),
    clock: (v) => clock(v),
    blank: () => "",
    name: (p) => p.name,
    tip: (p) => escape(p.name || p.seriesName || ""),
    spellTip: (p, rows) => `${escape(rows[p.value[0]])}: ${escape(p.seriesName)}<br>${p.name ? escape(p.name) + "<br>" : ""}${clock(p.value[1], true)} – ${clock(p.value[2], true)}`,

    // column: from, to, height.
    column: (p, api) => {
      const top = api.coord([api.value(0), api.value(2)]), foot = api.coord([api.value(1), 0]);
      return { type: "rect", shape: { x: top[0] + 0.5, y: top[1], width: Math.max(foot[0] - top[0] - 1, 1), height: foot[1] - top[1] }, style: { fill: api.visual("color") } };
    },
    // shelf: from, to, length; what lies below zero hangs under the axis.
    shelf: (p, api) => {
      const from = api.coord([0, api.value(0)]), to = api.coord([api.value(2), api.value(1)]);
      return { type: "rect", shape: { x: from[0], y: to[1], width: Math.max(to[0] - from[0], 0), height: Math.max(from[1] - to[1] - 0.5, 0.5) }, style: { fill: api.visual("color") } };
    },
    // interval: row, mean, low, high, place beside the middle of the row.
    interval: (p, api) => {
      const at = (v) => api.coord([api.value(v), api.value(0)]);
      const y = at(1)[1] + api.size([0, 1])[1] * api.value(4), fill = api.visual("color");
      return { type: "group", children: [
        { type: "line", shape: { x1: at(2)[0], x2: at(3)[0], y1: y, y2: y }, style: { stroke: fill, lineWidth: 2 } },
        api.value(4) < 0
          ? { type: "circle", shape: { cx: at(1)[0], cy: y, r: 5 }, style: { fill } }
          : { type: "rect", shape: { x: at(1)[0] - 4.5, y: y - 4.5, width: 9, height: 9 }, style: { fill } },
      ] };
    },
    // whisker: as interval, on top of a bar.
    whisker: (p, api) => {
      const from = api.coord([api.value(2), api.value(0)]), to = api.coord([api.value(3), api.value(0)]);
      const style = { stroke: api.visual("color"), lineWidth: 1 };
      const line = (x1, y1, x2, y2) => ({ type: "line", shape: { x1, y1, x2, y2 }, style });
      return { type: "group", silent: true, children: [line(from[0], from[1], to[0], to[1]), line(from[0], from[1] - 3, from[0], from[1] + 3), line(to[0], to[1] - 3, to[0], to[1] + 3)] };
    },
    // upright: place, low, high.
    upright: (p, api) => {
      const low = api.coord([api.value(0), api.value(1)]), high = api.coord([api.value(0), api.value(2)]);
      return { type: "rect", shape: { x: low[0] - 5, y: high[1], width: 10, height: Math.max(low[1] - high[1], 1) }, style: { fill: api.visual("color") } };
    },
    // spell: row, from, to, cut at the edges of the plot.
    spell: (p, api) => {
      const from = api.coord([api.value(1), api.value(0)]), to = api.coord([api.value(2), api.value(0)]);
      const cut = inside(p, from[0], to[0]), height = api.size([0, 1])[1] * 0.62;
      return cut && { type: "rect", shape: { x: cut[0], y: from[1] - height / 2, width: Math.max(cut[1] - cut[0], 0.6), height }, style: { fill: api.visual("color"), decal: api.visual("decal"), stroke: api.visual("borderColor") } };
    },
  };

  // dress replaces the names in an option by what they stand for.
  const dress = (node) => {
    if (Array.isArray(node)) return node.map(dress);
    if (node === null || typeof node !== "object") {
      if (typeof node !== "string") return node;
      if (node.startsWith("fn:")) return functions[node.slice(3)];
      if (node.startsWith("colour:")) return colour(node.slice(7));
      return node;
    }
    const out = {};
    for (const [key, value] of Object.entries(node)) {
      if (key === "color" && typeof value === "string" && value.startsWith("state:")) Object.assign(out, stateStyle(value.slice(6)));
      else if (key === "data" || key === "name" || key === "description") out[key] = key === "data" && Array.isArray(value) ? value.map(item) : value;
      else out[key] = dress(value);
    }
    return out;
  };
  // item dresses one datum; its own texts stay as they are.
  const item = (datum) => (datum && typeof datum === "object" && !Array.isArray(datum) ? dress(datum) : datum);

  const axes = (option, key) => (Array.isArray(option[key]) ? option[key] : option[key] ? [option[key]] : []);
  const pen = document.createElement("canvas").getContext("2d");
  // legendLines is how many lines the entries of a legend take.
  const legendLines = (legend, width, family) => {
    pen.font = "12px " + family;
    let lines = 1, x = 0;
    for (const name of legend.data || []) {
      const wide = legend.itemWidth + 5 + pen.measureText(name).width;
      if (x > 0 && x + wide > width) [lines, x] = [lines + 1, 0];
      x += wide + legend.itemGap;
    }
    return lines;
  };
  const theme = (option, width) => {
    const narrow = width < narrowBelow;
    const family = getComputedStyle(document.body).fontFamily;
    const faint = colour("faint"), rule = colour("rule"), ink = colour("ink");
    option.textStyle = { fontFamily: family, color: ink };
    option.backgroundColor = "transparent";
    option.color = [colour("accent")];
    for (const axis of [...axes(option, "xAxis"), ...axes(option, "yAxis")]) {
      axis.axisLabel = { ...axis.axisLabel, color: axis.type === "category" ? ink : faint, fontSize: 12, fontFamily: family };
      axis.nameTextStyle = { color: faint };
      axis.axisLine = { lineStyle: { color: rule }, ...axis.axisLine };
      axis.axisTick = { show: axis.type !== "category", lineStyle: { color: rule } };
      axis.splitLine = { show: axis.type === "value", lineStyle: { color: rule, opacity: 0.6 }, ...axis.splitLine };
      if (axis.type === "value" && narrow) axis.splitNumber = Math.min(axis.splitNumber || 3, 3);
      if (axis.maxInterval && narrow && axes(option, "xAxis").includes(axis)) axis.minInterval = axis.maxInterval *= 2;
      if (narrow && axes(option, "xAxis").length > 1 && axis === axes(option, "xAxis")[0]) axis.axisLabel.showMaxLabel = false;
      if (axis.max === 100) axis.interval = narrow ? 50 : 20;
    }
    for (const axis of axes(option, "yAxis")) {
      if (axis.name) axis.nameTextStyle.align = "left";
      if (axis.type === "category") Object.assign(axis.axisLabel, { interval: 0 }, narrow ? { width: 124, overflow: "break", fontSize: 10, lineHeight: 11 } : width < 800 ? { width: 200, overflow: "break", lineHeight: 13 } : { width: Math.min(320, 0.3 * width), overflow: "truncate" });
    }
    for (const zoom of axes(option, "dataZoom")) {
      if (zoom.type === "inside") Object.assign(zoom, { zoomOnMouseWheel: "ctrl", moveOnMouseWheel: false, preventDefaultMouseMove: false });
      else if (root.classList.contains("printing")) zoom.show = false;
      else Object.assign(zoom, { height: 22, bottom: 4, borderColor: rule, fillerColor: colour("accent-soft"), textStyle: { color: faint }, handleStyle: { color: colour("paper"), borderColor: colour("accent") }, moveHandleStyle: { color: rule }, dataBackground: { lineStyle: { opacity: 0 }, areaStyle: { opacity: 0 } }, brushSelect: false });
    }
    for (const axis of axes(option, "xAxis")) {
      if (axis.type === "category" && option.series.some((s) => s.type === "line") && axis.axisLabel.interval === "0") Object.assign(axis.axisLabel, { interval: 0, width: narrow ? 56 : 120, overflow: "break", fontSize: narrow ? 10 : 12, lineHeight: 13 });
    }
    if (option.tooltip.formatter === functions.spellTip) {
      const rows = axes(option, "yAxis")[0].data;
      option.tooltip.formatter = (p) => functions.spellTip(p, rows);
    }
    for (const legend of axes(option, "legend")) {
      Object.assign(legend, { itemWidth: 18, itemHeight: 12, itemGap: narrow ? 8 : 14, textStyle: { color: ink, fontFamily: family }, inactiveColor: faint });
      const more = legendLines(legend, width, family) - 1;
      for (const grid of axes(option, "grid")) if (more > 0) grid.top = Number(grid.top) + 18 * more;
    }
    option.tooltip = { ...option.tooltip, confine: true, backgroundColor: colour("paper"), borderColor: rule, textStyle: { color: ink, fontSize: 13 }, extraCssText: "white-space:normal;max-width:280px;box-shadow:none" };
    for (const series of option.series) {
      for (const datum of [series, ...(series.data || [])]) {
        if (datum && datum.label) {
          datum.label.padding = [1, 3];
          if (datum.label.position === "right" && narrow) {
            datum.label.show = false;
            for (const grid of axes(option, "grid")) grid.right = "24";
          }
        }
      }
      if (series.emphasis === undefined) series.emphasis = { disabled: true };
    }
    return option;
  };

  const charts = new Map();
  const drawAll = (width) => {
    for (const place of document.querySelectorAll(".chart")) {
      charts.get(place)?.dispose();
      const data = JSON.parse(document.getElementById(place.dataset.option).textContent);
      const size = { renderer: "svg", height: place.offsetHeight };
      if (width) size.width = width;
      const chart = echarts.init(place, null, size);
      chart.setOption(theme(dress(data), width || place.clientWidth));
      charts.set(place, chart);
    }
    root.dataset.drawn = String(charts.size);
  };

  const listen = () => {
    let width = innerWidth, waiting = 0;
    addEventListener("resize", () => {
      if (innerWidth === width) return;
      width = innerWidth;
      clearTimeout(waiting);
      waiting = setTimeout(drawAll, 150);
    });
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => drawAll());
    const unfolded = [];
    addEventListener("beforeprint", () => {
      for (const folded of document.querySelectorAll("details:not([open]):not(.off-paper)")) {
        folded.open = true;
        unfolded.push(folded);
      }
      root.classList.add("printing");
      drawAll(paperWidth);
    });
    addEventListener("afterprint", () => {
      for (const folded of unfolded.splice(0)) folded.open = false;
      root.classList.remove("printing");
      drawAll();
    });
  };

  const start = async () => {
    const packed = Uint8Array.from(atob(document.getElementById("engine").textContent), (c) => c.charCodeAt(0));
    const unpacked = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
    const script = document.createElement("script");
    script.textContent = await new Response(unpacked).text();
    document.head.append(script);
    drawAll();
    listen();
  };
  start().catch((why) => {
    root.classList.add("no-engine");
    document.getElementById("no-engine").hidden = false;
    console.error(why);
  });
}
