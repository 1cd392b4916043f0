// Bundles entry.js and compresses it to ../dist/echarts.js.gz. The same
// packages give the same bytes.
import { build } from "esbuild";
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";

const here = (name) => fileURLToPath(new URL(name, import.meta.url));

// What the licences ask for travels with the code: it ends up in every report.
const notices = [
  ["Apache ECharts", "echarts/LICENSE"], ["Apache ECharts, notice", "echarts/NOTICE"],
  ["ZRender", "zrender/LICENSE"], ["tslib", "tslib/LICENSE.txt"],
].map(([name, file]) => `${name}\n\n${readFileSync(here(`node_modules/${file}`), "utf8")}`);

const { outputFiles } = await build({
  entryPoints: [here("entry.js")],
  bundle: true,
  minify: true,
  write: false,
  format: "iife",
  target: "es2020",
  charset: "utf8",
  legalComments: "none",
  banner: { js: `/*!\n${notices.join("\n\n").replaceAll("*/", "* /")}\n*/` },
  define: { "process.env.NODE_ENV": '"production"' },
});
writeFileSync(here("../dist/echarts.js.gz"), gzipSync(outputFiles[0].contents, { level: 9 }));
