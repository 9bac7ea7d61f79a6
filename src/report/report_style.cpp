// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/report_style.h"

namespace qw::report {

const char* const report_style = R"css(
:root { --ink: #1c2530; --soft: #55606c; --line: #cfd6dc; --tint: #f5f3ee; }
* { box-sizing: border-box; }
html { font: 16px/1.55 Lato, "Segoe UI", "Helvetica Neue", Arial, sans-serif; color: var(--ink); background: #fff; }
body { max-width: 68rem; margin: 0 auto; padding: 2.5rem 1.25rem 4rem; }
h1, h2 { font-family: Vollkorn, Georgia, "Times New Roman", serif; font-weight: 600; line-height: 1.2; margin: 0; }
h1 { font-size: 2.1rem; }
h2 { font-size: 1.4rem; margin: 3rem 0 1rem; padding-top: .75rem; border-top: 1px solid var(--line); }
h3 { font-size: 1rem; margin: 1.75rem 0 .6rem; }
p { margin: .3rem 0; }
.subject { color: var(--soft); }
.verdict { margin: 1.75rem 0 0; padding: 1.1rem 1.4rem 1.2rem; background: var(--tint); border-left: 6px double var(--ink); }
.verdict strong { display: block; font: 600 1.6rem/1.3 Vollkorn, Georgia, serif; }
.finding { margin: 0 0 1rem; padding: .1rem 0 .1rem 1.1rem; border-left: 1px solid var(--line); }
.finding.error { border-left: 5px solid var(--ink); }
.finding.warning { border-left: 5px double var(--ink); }
.finding h3 { margin: .2rem 0 .3rem; font-weight: 400; line-height: 1.45; }
.finding .level { font-weight: 700; text-transform: capitalize; }
.finding .level::after { content: ":"; }
.finding .where { overflow-wrap: anywhere; margin: .3rem 0; padding: 0 0 0 1.1rem; columns: 22rem 2; }
.finding .todo { font-weight: 700; }
.finding .rule, .small { color: var(--soft); font-size: .875rem; }
.wall { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(9.5rem, 45%), 1fr)); gap: 1.25rem 1rem; margin: 0; padding: 0; list-style: none; }
figure { margin: 0; }
figure svg { display: block; width: 100%; height: auto; max-height: 24rem; background: #fff; }
svg rect { fill: none; vector-effect: non-scaling-stroke; }
svg .edge { stroke: var(--soft); stroke-width: .75px; }
svg .under { stroke: #fff; stroke-width: 3px; }
svg .trim { stroke: var(--ink); stroke-width: 1.25px; }
svg .safe { stroke: var(--ink); stroke-width: 1.25px; stroke-dasharray: 7 4; }
svg .margins { stroke: var(--ink); stroke-width: 1.25px; stroke-dasharray: 1.5 3; }
svg .inked { stroke: var(--ink); stroke-width: 1.25px; stroke-dasharray: 9 3 2 3; }
svg.store { position: absolute; }
.key { display: flex; flex-wrap: wrap; gap: .35rem 1.25rem; margin: .5rem 0 0; padding: 0; list-style: none; font-size: .875rem; color: var(--soft); }
.key svg { width: 2.25rem; height: 1.125rem; vertical-align: -.2rem; }
.finding .wall { margin: .6rem 0 .3rem; grid-template-columns: repeat(auto-fill, minmax(min(15rem, 100%), 1fr)); max-width: 48rem; }
.skip { position: absolute; left: -100rem; }
.skip:focus { left: 1rem; top: 1rem; padding: .6rem 1rem; background: #fff; border: 2px solid var(--ink); z-index: 1; }
a { color: inherit; }
:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
details { margin: .6rem 0; }
summary { cursor: pointer; padding: .5rem 0; min-height: 1.5rem; font-weight: 700; }
nav ul { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; margin: 1rem 0 0; padding: 0; list-style: none; }
nav a { display: inline-block; padding: .3rem 0; }
caption { text-align: left; color: var(--soft); padding-bottom: .4rem; }
figcaption { font-size: .8125rem; line-height: 1.35; color: var(--soft); margin-top: .35rem; overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: .875rem; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: .3rem .8rem .3rem 0; border-bottom: 1px solid var(--line); }
th { font-weight: 700; white-space: nowrap; }
td.number, th.number { text-align: right; }
@media print { body { max-width: none; padding: 0; } nav, .skip { display: none; } .wall { grid-template-columns: repeat(5, 1fr); } .finding, figure, tr { break-inside: avoid; } h2 { break-after: avoid; } }
)css";

}  // namespace qw::report
