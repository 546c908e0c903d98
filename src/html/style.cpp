#include "tackfree/html/style.hpp"

#include <fmt/format.h>

namespace tackfree {

namespace {

constexpr std::string_view screen_style = R"css(
:root { color-scheme: light dark;
  --paper: #fdfaf4; --card: #f4ecdd; --ink: #241c14; --soft: #5a4d3f; --rule: #cfc2ad;
  --strong: #7a3b0c; --link: #6b3209; --night: #dcd9e0; --weekend: #e6d3b1;
  --dry: #2f6f73; --bad: #a12b1c; --open: #8a7a52; --air: #b4530a; --dew: #2c5d8f; }
@media screen and (prefers-color-scheme: dark) { :root {
  --paper: #1a1612; --card: #282019; --ink: #f2e9dc; --soft: #c6b9a6; --rule: #5a4d3f;
  --strong: #f3b273; --link: #f3b273; --night: #353247; --weekend: #4a3a22;
  --dry: #7cc7c9; --bad: #ff9d8a; --open: #b5a272; --air: #ffb163; --dew: #8ec2f5; } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; padding: 0.6rem 1rem 2rem; max-width: 66rem; background: var(--paper);
  color: var(--ink); font: 1rem/1.4 "DejaVu Sans", Verdana, system-ui, sans-serif;
  overflow-wrap: break-word; }
h1 { font-size: 1.4rem; line-height: 1.2; margin: 0; }
h2 { font-size: 1.2rem; margin: 1.8rem 0 0.6rem; padding-bottom: 0.2rem;
  border-bottom: 3px solid var(--strong); }
h3 { font-size: 1rem; margin: 1.1rem 0 0.3rem; }
h4 { font-size: 1rem; margin: 0.6rem 0 0; color: var(--strong); }
p { margin: 0.4rem 0; max-width: 46rem; }
a { color: var(--link); }
.aside { color: var(--soft); font-size: 0.85rem; margin: 0.1rem 0; }
.running { display: none; }
.first { margin: 0.5rem 0; font-size: 0.95rem; line-height: 1.32; }
.first > p, .first > dl.terms, .first > ul.warnings { background: var(--card); margin: 0;
  border-left: 6px solid var(--strong); padding: 0.15rem 0.7rem; max-width: none; }
.first dl.terms > div { flex-wrap: nowrap; gap: 0.5rem; padding: 0.12rem 0; }
.first dl.terms dt { flex: 0 0 3.4rem; color: var(--strong); }
.first dl.terms dd { flex: 1 1 0; min-width: 0; max-width: none; }
dl.terms > div.danger, dl.terms > div.warning { display: block; }
.danger dt, .warning dt, .danger dd, .warning dd { display: inline; }
dl.terms .danger dt { color: var(--paper); background: var(--bad); padding: 0 0.3rem; }
dl.terms .warning dt { color: var(--bad); }
.danger dd { font-weight: bold; }
nav ul { list-style: none; display: flex; flex-wrap: wrap; gap: 0 1.1rem; padding: 0;
  margin: 0.2rem 0; }
nav a { display: flex; align-items: center; min-height: 44px; }
table { border-collapse: collapse; font-size: 0.9rem; margin: 0.5rem 0; max-width: 100%; }
th, td { padding: 0.25rem 0.7rem 0.25rem 0; text-align: right; vertical-align: top;
  border-bottom: 1px solid var(--rule); }
th:first-child { text-align: left; font-weight: normal; }
thead th, thead th:first-child { font-weight: bold; border-bottom: 2px solid var(--ink); }
tfoot th, tfoot td { border-top: 2px solid var(--ink); border-bottom: 0; font-weight: bold; }
@media screen and (max-width: 47rem) {
  .cards, .cards tbody, .cards tfoot, .cards tr, .cards th, .cards td { display: block; }
  .cards thead, .cards td:empty, .cards td.none { display: none; }
  .cards tr { border-bottom: 1px solid var(--rule); padding: 0.4rem 0; }
  .cards th, .cards tfoot th, .cards td, .cards tfoot td { border: 0; padding: 0.1rem 0; }
  .cards th:first-child { font-weight: bold; }
  .cards td { display: flex; justify-content: space-between; gap: 1rem; }
  .cards td::before { content: attr(data-head); color: var(--soft); text-align: left;
    font-weight: normal; } }
summary { cursor: pointer; color: var(--link); display: flex; align-items: center; gap: 0.5rem;
  min-height: 44px; list-style: none; }
summary::-webkit-details-marker { display: none; }
summary::before { content: "\25b8"; }
details[open] > summary::before { content: "\25be"; }
.more > summary { border-bottom: 1px solid var(--rule); }
.more > summary h2 { margin: 0; padding: 0.4rem 0; border: 0; font-size: 1.05rem; }
ul.points, ul.warnings { padding-left: 1.2rem; margin: 0.4rem 0; }
ul.points li, ul.warnings li { margin: 0.25rem 0; max-width: 46rem; }
ul.warnings { list-style: none; padding-left: 0; }
ul.warnings li, p.look { border-left: 4px solid var(--bad); padding-left: 0.6rem; }
.first ul.warnings li { margin: 0.15rem 0; max-width: none; }
ul.boxes, ol.work, ul.legend { list-style: none; padding: 0; margin: 0.4rem 0; }
ul.boxes label { display: flex; gap: 0.6rem; align-items: center; min-height: 44px; }
ul.boxes b { flex: 0 0 4.6rem; font-weight: bold; }
input[type=checkbox] { width: 1.3rem; height: 1.3rem; flex: none; margin: 0;
  accent-color: var(--strong); }
dl.terms { margin: 0.4rem 0; }
dl.terms > div { display: flex; flex-wrap: wrap; gap: 0 0.8rem; padding: 0.15rem 0; }
dl.terms dt { flex: 0 0 9.5rem; font-weight: bold; color: var(--soft); }
dl.terms dd { margin: 0; flex: 1 1 10rem; max-width: 46rem; }
.session { border-top: 1px solid var(--rule); }
.session:first-child { border-top: 0; }
.session > p { margin: 0.2rem 0; }
ol.work { margin: 0; }
ol.work > li { display: flex; flex-wrap: wrap; column-gap: 0.8rem; padding: 0.25rem 0;
  border-bottom: 1px dotted var(--rule); }
ol.work > li:last-child { border-bottom: 0; }
ol.work label { flex: 1 1 14rem; min-width: 0; display: flex; align-items: center; gap: 0.7rem;
  min-height: 44px; }
ol.work .line { flex: 1 1 0; min-width: 0; display: flex; flex-wrap: wrap; gap: 0 1rem; }
ol.work .when { flex: 0 0 10.5rem; font-variant-numeric: tabular-nums; }
ol.work .when b { margin-right: 0.5rem; }
ol.work .length { color: var(--soft); white-space: nowrap; }
ol.work .what { flex: 1 1 13rem; min-width: 0; }
ol.work p { flex: 1 0 100%; margin: 0 0 0.3rem; padding-left: 2rem; font-size: 0.9rem; }
ol.work p.look { margin-left: 2rem; padding-left: 0.6rem; flex-basis: calc(100% - 2rem); }
ol.work .pour b { color: var(--strong); }
.how { flex: 0 0 auto; font-size: 0.9rem; }
.how[open] { flex: 1 0 100%; padding-left: 2rem; }
.how > summary { padding: 0 0.3rem; }
ol.work .how p { padding: 0; }
.how ul { margin: 0.2rem 0 0.6rem; padding-left: 1.2rem; }
dl.readings { display: none; }
.strips { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 20.5rem), 1fr));
  gap: 1.2rem 1rem; margin: 0.6rem 0; }
figure { margin: 0; max-width: 28rem; }
figcaption { font-weight: bold; font-size: 0.9rem; padding-bottom: 0.2rem; }
.chart svg { display: block; width: 100%; height: auto; }
ul.legend { display: flex; flex-wrap: wrap; gap: 0.2rem 1.1rem; font-size: 0.85rem; }
ul.legend li { display: flex; align-items: center; gap: 0.4rem; }
ul.legend svg { flex: none; }
footer { margin-top: 2rem; border-top: 3px solid var(--strong); font-size: 0.9rem; }
)css";

constexpr std::string_view chart_style = R"css(
svg text { font-size: 13px; fill: var(--ink); }
svg .scale, svg .row { fill: var(--soft); }
svg .batch { font-weight: bold; }
svg .weekday { fill: var(--card); }
svg .weekend { fill: var(--weekend); }
svg .night { fill: var(--night); }
svg .midnight, svg .tick, svg .grid { stroke: var(--rule); stroke-width: 1; }
svg .lane { stroke: var(--rule); }
svg .tick { stroke: var(--ink); }
svg .now { stroke: var(--strong); stroke-width: 2.5; }
svg .seam { stroke: var(--ink); stroke-width: 2; stroke-dasharray: 2 4; }
svg .open { fill: var(--open); }
svg .quiet { fill: url(#pattern-quiet); stroke: var(--soft); stroke-width: 0.6; }
svg .unfit, svg .outside { fill: url(#pattern-unfit); }
svg .unfit { stroke: var(--bad); stroke-width: 0.6; }
svg .outside { opacity: 0.55; }
svg .drying { fill: url(#pattern-drying); stroke: var(--dry); stroke-width: 0.8; }
svg .idle { stroke: var(--soft); stroke-width: 1.4; stroke-dasharray: 6 3; }
svg .work { fill: var(--strong); stroke: var(--paper); stroke-width: 0.5; }
svg polyline { fill: none; stroke-linejoin: round; }
svg .air { stroke: var(--air); stroke-width: 2; }
svg .dew { stroke: var(--dew); stroke-width: 1.5; stroke-dasharray: 4 2; }
svg .humid { stroke: var(--dew); stroke-width: 2; }
svg .limit { stroke: var(--bad); stroke-width: 1.2; stroke-dasharray: 8 3 2 3; }
svg .progress { stroke: var(--dry); stroke-width: 2; }
svg .reached { stroke: var(--dry); stroke-width: 2; }
svg .touch { fill: var(--paper); stroke: var(--ink); stroke-width: 1.5; }
svg .handle { fill: var(--ink); }
svg .vapour { stroke: var(--strong); stroke-width: 2; }
svg .at-limit { stroke: var(--bad); stroke-width: 1.8; }
svg .tin { fill: var(--card); stroke: var(--ink); stroke-width: 1.4; }
svg .shelf { fill: var(--rule); stroke: var(--ink); stroke-width: 1.4; }
svg .under { fill: var(--open); }
svg .over { fill: var(--bad); }
svg .expected { fill: var(--strong); }
svg .ninety { fill: none; stroke: var(--strong); stroke-width: 1.6; }
svg .airing { fill: var(--dew); }
.patterns { position: absolute; width: 0; height: 0; }
.pattern-drying { stroke: var(--dry); stroke-width: 1.6; }
.pattern-unfit { fill: var(--bad); }
.pattern-quiet { stroke: var(--soft); stroke-width: 1.2; }
)css";

constexpr std::string_view paper_style = R"css(
@media print {
  @page { margin: 10mm 12mm 12mm; }
  :root { --paper: #fff; --card: #fff; }
  html { font-size: 8.5pt; }
  body { display: table; width: 100%; max-width: none; padding: 0; line-height: 1.25; }
  .running { display: table-header-group; break-inside: avoid; }
  .running p { max-width: none; margin: 0 0 2mm; border-bottom: 0.3mm solid var(--ink); }
  .page { display: table-row-group; }
  p, ul.points li, ul.warnings li, dl.terms dd { max-width: none; }
  header h1, header .aside, nav, .how, .first section, details details { display: none; }
  body:not(.whole) .more, body:not(.whole) .charts { display: none; }
  h2 { margin: 3mm 0 1.5mm; border-bottom-width: 0.5mm; }
  h3 { margin: 1.5mm 0 0.5mm; }
  h2, h3, h4, ul.legend, summary { break-after: avoid; }
  .first > p, .first > dl.terms, .first > ul.warnings { border-left-width: 0.5mm; }
  dl.terms .danger dt { color: var(--bad); background: none; border: 0.3mm solid var(--bad); }
  figure, table, li, dl.terms > div, .session, #what-to-buy, #also-have-at-hand {
    break-inside: avoid; }
  #also-have-at-hand { break-before: avoid; }
  thead { display: table-header-group; }
  svg { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  a { color: inherit; text-decoration: none; }
  summary { min-height: 0; color: var(--ink); }
  summary::before, details[open] > summary::before { content: none; }
  .sessions { columns: 2; column-gap: 6mm; }
  .session { border-top: 0.2mm solid var(--ink); }
  .session h3 { margin-top: 1mm; }
  ol.work > li { padding: 0.3mm 0; border: 0; }
  ol.work label, ul.boxes label { min-height: 0; align-items: baseline; gap: 1.5mm; }
  ol.work .when { flex: 0 0 auto; }
  ol.work .length { display: none; }
  ol.work p { padding-left: 5mm; margin: 0; }
  ol.work p.look { margin-left: 5mm; border-left-width: 0.5mm; }
  ul.boxes { columns: 2; column-gap: 6mm; }
  ul.boxes label { padding: 0.4mm 0; }
  .strips { grid-template-columns: repeat(2, 1fr); }
  dl.readings { flex: 1 0 100%; display: flex; gap: 0 2mm; margin: 0.5mm 0 1.5mm;
    padding-left: 5mm; }
  dl.readings > div { flex: 1 1 0; border-bottom: 0.2mm solid var(--ink); min-height: 7mm; }
  dl.readings dt { font-size: 6.5pt; color: var(--soft); white-space: nowrap; }
  dl.readings dd { margin: 0; }
  input[type=checkbox] { appearance: none; border: 0.3mm solid var(--ink); background: none;
    width: 3mm; height: 3mm; }
  footer { break-before: avoid; margin-top: 2mm; border-top-width: 0.3mm; }
}
)css";

}  // namespace

std::string html_style() { return fmt::format("{}{}{}", screen_style, chart_style, paper_style); }

std::string_view chart_patterns() {
  return R"svg(<svg class="patterns" aria-hidden="true" focusable="false"><defs>
<pattern id="pattern-drying" width="6" height="6" patternUnits="userSpaceOnUse">
<path class="pattern-drying" d="M-1,1 L1,-1 M0,6 L6,0 M5,7 L7,5"/></pattern>
<pattern id="pattern-unfit" width="5" height="5" patternUnits="userSpaceOnUse">
<circle class="pattern-unfit" cx="2.5" cy="2.5" r="1.1"/></pattern>
<pattern id="pattern-quiet" width="4" height="4" patternUnits="userSpaceOnUse">
<path class="pattern-quiet" d="M0,2 L4,2"/></pattern>
</defs></svg>
)svg";
}

}  // namespace tackfree
