#include "report/page_style.hpp"

namespace fairblade::report {

std::string page_style(job::Paper paper) {
  const std::string page = paper == job::Paper::letter ? "Letter" : "A4";
  return R"(
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; max-width: 62rem; padding: 0 1rem 4rem; background: #fff; color: #1a1a1a;
  font: 1rem/1.5 sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 1.2rem 0 .3rem; }
h2 { font-size: 1.3rem; line-height: 1.25; margin: 2.4rem 0 .6rem; padding-top: .5rem; border-top: 3px solid #1a1a1a; }
h3 { font-size: 1.08rem; margin: 1.6rem 0 .4rem; }
p, ul, ol { margin: .5rem 0; max-width: 44rem; }
ul, ol { padding-left: 1.3rem; }
li { margin: .3rem 0; }
small, .aside, figcaption { color: #4a4a4a; font-size: .875rem; }
nav ul { columns: 16rem; padding: 0; list-style: none; }
nav a { display: block; padding: .3rem 0; }
a { color: #123f7a; }
.five { display: grid; grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr)); gap: .6rem; margin: 1rem 0; }
.five > div { border: 2px solid #1a1a1a; padding: .6rem .8rem; }
.five dt { font-size: .9rem; }
.five dd { margin: 0; }
.five .value { font-size: 1.25rem; line-height: 1.3; font-weight: bold; }
.warnings li { margin: .6rem 0; }
table { border-collapse: collapse; width: 100%; margin: .8rem 0 1.2rem; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-weight: bold; padding: .3rem 0; }
th, td { text-align: left; vertical-align: top; padding: .3rem .5rem; border-bottom: 1px solid #767676; font-size: .94rem;
  overflow-wrap: break-word; }
td:not(.n) { overflow-wrap: anywhere; }
thead th { border-bottom: 2px solid #1a1a1a; vertical-align: bottom; line-height: 1.25; font-size: .875rem; }
tbody th { overflow-wrap: anywhere; min-width: 5em; }
table.wide tbody th { min-width: 8em; }
.n { text-align: right; }
td.n span, tbody th.n span { white-space: nowrap; }
table.narrow { max-width: 30rem; }
table.narrow th, table.narrow td { padding: .3rem; }
.side-by-side { display: grid; grid-template-columns: repeat(auto-fit, minmax(15rem, 1fr)); gap: 0 1.5rem; align-items: start; }
figure { margin: .6rem 0; }
.shown > * { min-width: 0; }
figure svg { display: block; width: 100%; height: auto; max-width: 40rem; }
.whole-blade svg { max-width: none; }
.narrow-only { display: none; }
.work { list-style: none; padding: 0; counter-reset: step; max-width: 48rem; }
.work > li { counter-increment: step; position: relative; padding: .2rem 0 .6rem 4rem; margin: 0; border-bottom: 1px solid #767676; }
.work > li::before { content: ""; position: absolute; left: 0; top: .45rem; width: 1.15rem; height: 1.15rem;
  border: 2px solid #1a1a1a; }
.work > li::after { content: counter(step) "."; position: absolute; left: 1.5rem; top: .2rem; width: 2rem; text-align: right; }
.work p { margin: .15rem 0; }
dl.plain { display: grid; grid-template-columns: minmax(9rem, 17rem) 1fr; gap: .1rem 1rem; font-size: .875rem; }
dl.plain dd { margin: 0; }
@media screen and (min-width: 56rem) {
  .shown { display: grid; grid-template-columns: 2fr 3fr; gap: 0 2rem; align-items: start; }
}
@media screen and (max-width: 46rem) {
  .wide-only { display: none; }
  .narrow-only { display: block; }
  .narrow-only svg { max-width: 32rem; }
  table.wide, table.wide tbody, table.wide tr, table.wide th, table.wide td { display: block; }
  table.wide caption { display: block; }
  table.wide thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  table.wide tr { border: 1px solid #767676; margin: .6rem 0; }
  table.wide tbody th { background: #e8e8e8; border-bottom: 0; font-size: 1rem; }
  table.wide td { display: flex; justify-content: space-between; gap: 1rem; text-align: right; border-bottom: 1px solid #d0d0d0; }
  table.wide tbody th::before { content: attr(data-of) " "; font-weight: normal; }
  table.wide td::before { content: attr(data-of); color: #4a4a4a; font-size: .875rem; text-align: left; max-width: 55%;
    flex: none; overflow-wrap: normal; }
  table.narrow th, table.narrow td { padding: .25rem .3rem; font-size: .875rem; }
  table.narrow tbody th { min-width: 0; }
  dl.plain { grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); }
}
@page { size: )" +
         page + R"(; margin: 15mm 14mm 17mm;
  @bottom-right { content: counter(page) " of " counter(pages); font: 9pt sans-serif; color: #1a1a1a; } }
@media print {
  body { max-width: none; padding: 0; font-size: 10pt; line-height: 1.4; color: #000; }
  nav { display: none; }
  h1 { font-size: 18pt; margin-top: 0; }
  h2 { font-size: 14pt; }
  h3 { font-size: 11pt; }
  h2, h3, caption, p:has(+ table) { break-after: avoid; }
  p, li { break-inside: avoid; }
  table + .aside { break-before: avoid; }
  .new-page { break-before: page; }
  .new-page > h2 { margin-top: 0; }
  dl.plain { grid-template-columns: auto 1fr auto 1fr; }
  tr, table, figure, .work > li, .five > div, .station { break-inside: avoid; }
  thead { display: table-header-group; }
  th, td { padding: .12rem .35rem; font-size: 9pt; }
  thead th { font-size: 8.5pt; }
  small, .aside, figcaption, dl.plain { font-size: 8.5pt; color: #000; }
  .shown small { font-size: 7.5pt; }
  p, ul, ol, .work { max-width: none; }
  .five { grid-template-columns: 1fr 1fr; }
  .five .value { font-size: 12pt; }
  .shown { display: grid; grid-template-columns: 64mm 1fr; gap: 0 4mm; align-items: start; }
  .whole-blade svg { max-height: 222mm; }  /* with its heading and caption on one sheet */
  .shown figure { margin: 0; }
  .shown table { margin-top: 0; }
  .shown th, .shown td { padding: .1rem .15rem; font-size: 8pt; }
  .side-by-side { grid-template-columns: 1fr 1fr; gap: 0 4mm; }
  a { color: #000; text-decoration: none; }
}
)";
}

}  // namespace fairblade::report
