#include "tackfree/html/style.hpp"

namespace tackfree {

namespace {

constexpr std::string_view style = R"css(
:root { color-scheme: light dark;
  --paper: #fdfaf4; --card: #f4ecdd; --ink: #241c14; --soft: #5a4d3f; --rule: #cfc2ad;
  --strong: #7a3b0c; --link: #6b3209; --night: #e9e2d3; --weekend: #e6d3b1;
  --dry: #2f6f73; --bad: #a12b1c; --open: #8a7a52; --air: #b4530a; --dew: #2c5d8f; }
@media screen and (prefers-color-scheme: dark) { :root {
  --paper: #1a1612; --card: #282019; --ink: #f2e9dc; --soft: #c6b9a6; --rule: #5a4d3f;
  --strong: #f3b273; --link: #f3b273; --night: #100d0a; --weekend: #4a3a22;
  --dry: #7cc7c9; --bad: #ff9d8a; --open: #b5a272; --air: #ffb163; --dew: #8ec2f5; } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; padding: 0.6rem 1rem 2rem; max-width: 62rem; background: var(--paper);
  color: var(--ink); font: 1rem/1.45 "DejaVu Sans", Verdana, system-ui, sans-serif;
  overflow-wrap: anywhere; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0.2rem 0 0; }
h2 { font-size: 1.2rem; margin: 2.2rem 0 0.6rem; padding-bottom: 0.2rem;
  border-bottom: 3px solid var(--strong); }
h3 { font-size: 1rem; margin: 1.1rem 0 0.3rem; }
p { margin: 0.4rem 0; max-width: 46rem; }
a { color: var(--link); }
.aside { color: var(--soft); font-size: 0.85rem; font-weight: normal; }
.first { background: var(--card); border-left: 6px solid var(--strong); padding: 0.5rem 0.8rem;
  margin: 0.6rem 0; }
.first dl { margin: 0; }
.first dl.terms > div { flex-wrap: nowrap; gap: 0.6rem; }
.first dl.terms dt { flex: 0 0 4.2rem; color: var(--strong); font-weight: bold; }
.first dl.terms dd { flex: 1 1 0; max-width: none; }
.first div:nth-child(-n+2) dd { font-weight: bold; }
nav ul { list-style: none; display: flex; flex-wrap: wrap; gap: 0.1rem 0.9rem; padding: 0;
  margin: 0.6rem 0; font-size: 0.9rem; }
nav a { display: inline-block; padding: 0.25rem 0; }
.wide { overflow-x: auto; max-width: 100%; }
.wide:focus-visible { outline: 3px solid var(--strong); outline-offset: 2px; }
table { border-collapse: collapse; font-size: 0.9rem; margin: 0.5rem 0; }
th, td { padding: 0.25rem 0.7rem 0.25rem 0; text-align: right; vertical-align: top;
  border-bottom: 1px solid var(--rule); white-space: nowrap; }
th:first-child { text-align: left; font-weight: normal; white-space: normal; min-width: 8rem; }
thead th, thead th:first-child { font-weight: bold; border-bottom: 2px solid var(--ink); }
tfoot th, tfoot td { border-top: 2px solid var(--ink); border-bottom: 0; font-weight: bold; }
details table td { text-align: left; }
summary { cursor: pointer; padding: 0.3rem 0; color: var(--link); }
ul.points, ul.warnings { padding-left: 1.2rem; }
ul.points li, ul.warnings li { margin: 0.25rem 0; max-width: 46rem; }
ul.warnings { list-style: none; padding-left: 0; }
ul.warnings li { border-left: 4px solid var(--bad); padding-left: 0.6rem; }
ul.boxes, ol.work, ul.legend { list-style: none; padding: 0; margin: 0.4rem 0; }
ul.boxes li { padding: 0.15rem 0; }
ul.boxes label { display: flex; gap: 0.6rem; align-items: baseline; }
ul.boxes b { flex: 0 0 4.6rem; text-align: right; font-weight: bold; }
input[type=checkbox] { width: 1.1rem; height: 1.1rem; flex: none; margin: 0;
  accent-color: var(--strong); vertical-align: -0.15rem; }
dl.terms { margin: 0.4rem 0; }
dl.terms > div { display: flex; flex-wrap: wrap; gap: 0 0.8rem; padding: 0.15rem 0; }
dl.terms dt { flex: 0 0 9.5rem; font-weight: bold; color: var(--soft); }
dl.terms dd { margin: 0; flex: 1 1 16rem; max-width: 46rem; }
.work-day { border-top: 1px solid var(--rule); }
ol.work > li { padding: 0.35rem 0; border-bottom: 1px dotted var(--rule); }
ol.work > li:last-child { border-bottom: 0; }
ol.work .clock { display: inline-block; margin-left: 0.5rem;
  font-weight: bold; font-variant-numeric: tabular-nums; }
ol.work .clock-5 { min-width: 3rem; }
ol.work .clock-8 { min-width: 5rem; }
ol.work .length { color: var(--soft); margin-left: 0.6rem; white-space: nowrap; }
ol.work p { margin: 0.1rem 0 0 1.6rem; font-size: 0.9rem; }
ol.work .pour b { color: var(--strong); }
ol.work .why { color: var(--soft); }
.how { font-size: 0.85rem; }
dl.readings { display: none; }
figure { margin: 0.5rem 0; }
.chart svg { display: block; font-size: 0.84rem; }
@media (min-width: 48rem) { .chart svg { font-size: 0.94rem; } }
@media (min-width: 64rem) { .chart svg { font-size: 1.24rem; } }
.small-charts { display: flex; flex-wrap: wrap; gap: 0.8rem; }
.small-charts figure { margin: 0; }
.small-charts .chart svg { font-size: 1.05rem; }
ul.legend { display: flex; flex-wrap: wrap; gap: 0.2rem 1.1rem; font-size: 0.85rem; }
ul.legend li { display: flex; align-items: center; gap: 0.4rem; }
ul.legend svg { flex: none; }
svg text { font-size: 11px; fill: var(--ink); }
svg .scale, svg .row { fill: var(--soft); font-size: 10.5px; }
svg .weekend-day, svg .batch { font-weight: bold; }
svg .batch { font-size: 12px; }
svg .divide-word, svg .limit-word { font-size: 10.5px; fill: var(--soft); font-style: italic; }
svg .limit-word, svg .mark, svg .divide-word, svg .row { paint-order: stroke; stroke: var(--paper);
  stroke-width: 3px; stroke-linejoin: round; }
svg .weekday { fill: var(--card); }
svg .weekend { fill: var(--weekend); }
svg .night { fill: var(--night); }
svg .midnight, svg .tick, svg .rail, svg .lane, svg .grid { stroke: var(--rule); stroke-width: 1; }
svg .lane { stroke: var(--soft); }
svg .tick { stroke: var(--ink); }
svg .now { stroke: var(--strong); stroke-width: 2.5; }
svg .seam { stroke: var(--ink); stroke-width: 2; stroke-dasharray: 2 4; }
svg .open { fill: var(--open); }
svg .quiet { fill: url(#pattern-quiet); stroke: var(--soft); stroke-width: 0.6; }
svg .unfit { fill: url(#pattern-unfit); }
svg .outside { fill: url(#pattern-outside); }
svg .unfit { stroke: var(--bad); stroke-width: 0.6; }
svg .drying { fill: url(#pattern-drying); stroke: var(--dry); stroke-width: 0.8; }
svg .idle { stroke: var(--soft); stroke-width: 1.4; stroke-dasharray: 6 3; }
svg .work { fill: var(--strong); stroke: var(--paper); stroke-width: 0.5; }
svg polyline { fill: none; stroke-linejoin: round; }
svg line.air, svg .air { stroke: var(--air); stroke-width: 2; }
svg line.dew, svg .dew { stroke: var(--dew); stroke-width: 1.5; stroke-dasharray: 4 2; }
svg .limit { stroke: var(--bad); stroke-width: 1.2; stroke-dasharray: 8 3 2 3; }
svg .progress { stroke: var(--dry); stroke-width: 2; }
svg .reached { stroke: var(--dry); stroke-width: 2; }
svg .touch { fill: var(--paper); stroke: var(--ink); stroke-width: 1.5; }
svg .handle { fill: var(--ink); }
svg .vapour { stroke: var(--strong); stroke-width: 2; }
svg .at-limit { stroke: var(--bad); stroke-width: 1.8; }
svg .tin { fill: var(--card); stroke: var(--ink); stroke-width: 1.4; }
svg .shelf { fill: url(#pattern-quiet); stroke: var(--ink); stroke-width: 1.4; }
svg .under { fill: var(--open); }
svg .over { fill: url(#pattern-unfit); stroke: var(--bad); stroke-width: 1.5; }
svg .airing { fill: url(#pattern-quiet); stroke: var(--dew); stroke-width: 0.8; }
.patterns { position: absolute; width: 0; height: 0; }
.pattern-drying { stroke: var(--dry); stroke-width: 1.6; }
.pattern-outside { fill: var(--bad); }
.pattern-unfit { fill: var(--bad); }
.pattern-quiet { stroke: var(--soft); stroke-width: 1.2; }
footer { margin-top: 2rem; border-top: 3px solid var(--strong); font-size: 0.9rem; }
@media print {
  @page { margin: 14mm 13mm; }
  html { font-size: 9.5pt; }
  body { max-width: none; padding: 0; }
  h2 { margin-top: 1.5rem; }
  p, ul.points li, ul.warnings li, dl.terms dd { max-width: none; }
  nav, details, .how { display: none; }
  h2, h3, ul.legend { break-after: avoid; }
  footer { break-before: avoid; margin-top: 0.8rem; }
  .wide { overflow: visible; }
  .chart svg { font-size: 3.8mm; }
  .small-charts .chart svg { font-size: 3.6mm; }
  figure, .work-day, table, li, dl.terms > div { break-inside: avoid; }
  ol.work > li { padding: 0.15rem 0; }
  thead { display: table-header-group; }
  .first, svg { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  a { color: inherit; text-decoration: none; }
  dl.readings { display: flex; flex-wrap: wrap; gap: 1mm 4mm; margin: 1mm 0 3mm; }
  dl.readings > div { display: flex; flex: 1 1 15%; border-bottom: 0.3mm solid var(--ink);
    min-height: 11mm; }
  dl.readings > div:last-child { flex: 1 1 100%; min-height: 13mm; }
  dl.readings dt { font-size: 7.5pt; color: var(--soft); }
  dl.readings dd { margin: 0; }
  input[type=checkbox] { appearance: none; border: 0.4mm solid var(--ink); background: none;
    width: 4mm; height: 4mm; }
}
)css";

}  // namespace

std::string_view html_style() { return style; }

std::string_view chart_patterns() {
  return R"svg(<svg class="patterns" aria-hidden="true" focusable="false"><defs>
<pattern id="pattern-drying" width="6" height="6" patternUnits="userSpaceOnUse">
<path class="pattern-drying" d="M-1,1 L1,-1 M0,6 L6,0 M5,7 L7,5"/></pattern>
<pattern id="pattern-unfit" width="5" height="5" patternUnits="userSpaceOnUse">
<circle class="pattern-unfit" cx="2.5" cy="2.5" r="1.1"/></pattern>
<pattern id="pattern-outside" width="10" height="10" patternUnits="userSpaceOnUse">
<circle class="pattern-outside" cx="5" cy="5" r="0.9"/></pattern>
<pattern id="pattern-quiet" width="4" height="4" patternUnits="userSpaceOnUse">
<path class="pattern-quiet" d="M0,2 L4,2"/></pattern>
</defs></svg>
)svg";
}

}  // namespace tackfree
