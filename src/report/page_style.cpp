// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/page_sections.h"

namespace qw::report {

// Everything that has a meaning is said in words; weight and form of lines repeat it, colour does not. --soft and --link
// on white and on --tint have a contrast of 5.5 and more (WCAG 2.2, 1.4.3 asks for 4.5).
const char* const page_style = R"css(
:root { --ink: #1c2530; --soft: #55606c; --line: #cfd6dc; --edge: #76818c; --tint: #f5f3ee; --link: #14506b; --serif: Vollkorn, Georgia, "Times New Roman", serif; }
* { box-sizing: border-box; }
html { font: 16px/1.55 Lato, "Segoe UI", "Helvetica Neue", Arial, sans-serif; color: var(--ink); background: #fff; -webkit-text-size-adjust: 100%; }
body { max-width: 72rem; margin: 0 auto; padding: 2.25rem 1.25rem 4rem; overflow-wrap: break-word; }
h1, h2, h3 { font-family: var(--serif); font-weight: 600; line-height: 1.2; margin: 0; }
h1 { font-size: clamp(1.7rem, 5vw, 2.3rem); }
h2 { font-size: 1.5rem; margin: 3.25rem 0 1rem; padding-top: .8rem; border-top: 1px solid var(--line); }
h3 { font-size: 1.2rem; margin: 2.25rem 0 .8rem; }
h4 { font-size: 1rem; line-height: 1.45; margin: 0 0 .3rem; }
p, dl, ul, ol { margin: .3rem 0; }
p, li, dd { max-width: 46rem; }
a { color: var(--link); text-underline-offset: .15em; }
a:focus-visible, summary:focus-visible, [tabindex]:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
code { font: .9em ui-monospace, "DejaVu Sans Mono", Consolas, monospace; overflow-wrap: anywhere; }
.skip { position: absolute; left: -100rem; background: #fff; padding: .6rem 1rem; }
.skip:focus { left: 1rem; top: .5rem; }
.aside { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.subject, .small { color: var(--soft); }
.small { font-size: .875rem; }
.verdict { margin: 1.5rem 0 0; padding: 1.1rem 1.4rem 1.2rem; background: var(--tint); border-left: 6px double var(--ink); }
.verdict h2 { margin: 0 0 .2rem; padding: 0; border: 0; font-size: 1.7rem; }
.parts { margin: 1.25rem 0 0; padding: 0; list-style: none; display: flex; flex-wrap: wrap; gap: 0 1.5rem; }
.parts a, .first a { display: inline-block; padding: .15rem 0; min-height: 1.75rem; }
.first { padding-left: 0; list-style: none; border-top: 1px solid var(--line); }
.first li { display: grid; grid-template-columns: 5.2rem 1fr; border-bottom: 1px solid var(--line); padding: .25rem 0; max-width: none; }
.first .level { padding: .15rem 0; }
.level { font-weight: 700; text-transform: capitalize; }
.finding { margin: 0 0 1.9rem; padding: .1rem 0 .2rem 1.1rem; border-left: 1px solid var(--edge); scroll-margin-top: 1rem; }
.finding.error { border-left: 6px solid var(--ink); }
.finding.warning { border-left: 6px double var(--ink); }
.finding:target, tr:target, .wall li:target { background: var(--tint); }
.finding h4 { max-width: 46rem; }
.todo { font-weight: 700; }
.todo::before { content: "→ "; content: "→ " / ""; }
.places { overflow-wrap: anywhere; }
ul.places { padding-left: 1.1rem; columns: 21rem; }
.places li { break-inside: avoid; }
.places a { display: inline-block; min-height: 1.5rem; }
summary { cursor: pointer; padding: .25rem 0; color: var(--link); }
.shown { display: flex; flex-wrap: wrap; gap: 1.25rem; margin: .9rem 0 .6rem; }
.shown figure { width: 19rem; max-width: 100%; }
figure { margin: 0; }
figure svg, .wall svg { display: block; width: 100%; height: auto; max-height: 24rem; }
figcaption { font-size: .8125rem; line-height: 1.4; color: var(--soft); margin-top: .35rem; }
.paper { fill: #fff; stroke: var(--edge); stroke-width: 1px; vector-effect: non-scaling-stroke; }
.line, .under { fill: none; vector-effect: non-scaling-stroke; stroke: var(--ink); stroke-width: 1.5px; }
.under { stroke: #fff; stroke-width: 3.5px; stroke-opacity: .85; }
.sheet, .frame { stroke-width: 1px; }
.frame { stroke: var(--edge); }
.trim { stroke-dasharray: 12 4; }
.safe { stroke-dasharray: 1.5 3.5; stroke-width: 2px; }
.margins { stroke-dasharray: 9 3 2 3; }
.inked { stroke-dasharray: 4 3; }
.artwork { stroke-width: 1px; }
.lost { fill: url(#hatch); fill-rule: evenodd; }
#hatch path { stroke: var(--ink); stroke-width: .45; }
.store { position: absolute; width: 0; height: 0; }
.key { display: flex; flex-wrap: wrap; gap: .2rem 1.4rem; margin-top: 1rem; padding: 0; list-style: none; font-size: .875rem; }
.sample { width: 2.25rem; height: .75rem; vertical-align: baseline; }
.wall { display: grid; grid-template-columns: repeat(auto-fill, minmax(7.5rem, 1fr)); gap: 1rem .9rem; margin: .4rem 0 1.6rem; padding: 0; list-style: none; align-items: end; }
.wall a { display: block; text-decoration: none; font-size: .8125rem; line-height: 1.4; min-height: 1.75rem; }
.wall a:hover .page, .wall a:focus .page { text-decoration: underline; }
.wall .page { font-weight: 700; font-variant-numeric: tabular-nums; }
.wall svg { max-height: 11rem; margin-bottom: .3rem; overflow: visible; }
.wide { overflow-x: auto; border: 1px solid var(--line); padding: 0 .8rem; }
table { border-collapse: collapse; width: 100%; font-size: .875rem; font-variant-numeric: tabular-nums; }
caption { text-align: left; color: var(--soft); padding: .6rem 0; }
th, td { text-align: left; vertical-align: top; padding: .35rem .9rem .35rem 0; border-bottom: 1px solid var(--line); }
th { font-weight: 700; }
thead th, .tight { white-space: nowrap; }
.number { text-align: right; white-space: nowrap; }
td a { display: inline-block; min-width: 1.5rem; min-height: 1.5rem; }
dt { font-weight: 700; margin-top: .8rem; }
dd { margin: 0; }
footer { margin-top: 3.5rem; padding-top: .8rem; border-top: 1px solid var(--line); }
@media (max-width: 30rem) { .verdict { padding: 1rem; } .shown figure { width: 100%; } .wall { grid-template-columns: repeat(auto-fill, minmax(5.5rem, 1fr)); } }
@page { margin: 15mm 14mm; }
@media print {
  html { font-size: 10pt; }
  body { max-width: none; padding: 0; }
  a { color: inherit; text-decoration: none; }
  .skip, .parts { display: none; }
  .verdict { background: none; border: 1px solid var(--ink); border-left: 6px double var(--ink); }
  h2, h3, h4 { break-after: avoid; }
  figure, tr, .wall li, .first li, .verdict { break-inside: avoid; }
  .finding h4, .finding p { break-inside: avoid; orphans: 3; widows: 3; }
  .shown { display: block; } .shown figure { display: inline-block; width: 54mm; margin-right: 3mm; vertical-align: top; }
  .wall { display: block; } .wall li { display: inline-block; width: 29mm; margin: 0 3mm 2mm 0; padding-top: 1mm; vertical-align: bottom; }
  .new-page { break-before: page; }
  .wide { overflow: visible; border: 0; padding: 0; }
  table { font-size: 7pt; } th, td { padding: .15rem .4rem .15rem 0; overflow-wrap: normal; } tbody th { overflow-wrap: anywhere; } td.number { white-space: normal; }
  td a, .places a { min-height: 0; min-width: 0; } thead { display: table-header-group; } thead th { white-space: normal; }
  details::details-content { content-visibility: visible; display: block; }
}
)css";

}  // namespace qw::report
