// The kinds of chart and the components that the reports use, and no others.
// A kind that is missing here draws nothing and says nothing: add it here first.
import { init, use } from "echarts/core";
import { BarChart, CustomChart, LineChart, ScatterChart } from "echarts/charts";
import {
  AriaComponent,
  DataZoomInsideComponent,
  DataZoomSliderComponent,
  GridComponent,
  LegendComponent,
  LegendScrollComponent,
  MarkLineComponent,
  TooltipComponent,
} from "echarts/components";
import { SVGRenderer } from "echarts/renderers";

use([
  BarChart, CustomChart, LineChart, ScatterChart,
  AriaComponent, DataZoomInsideComponent, DataZoomSliderComponent, GridComponent,
  LegendComponent, LegendScrollComponent, MarkLineComponent, TooltipComponent,
  SVGRenderer,
]);

globalThis.echarts = { init };
