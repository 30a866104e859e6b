import { chartRules } from './chart-style.ts';
import { lightTheme, sans, themeCss } from './theme.ts';

const serif = "Charter,'Bitstream Charter','Sitka Text',Cambria,'Noto Serif',Georgia,serif";

const page = `
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 ${sans};-webkit-text-size-adjust:100%}
.page{max-width:1060px;margin:0 auto;padding:28px 24px 64px}
h1,h2,h3{font-family:${serif};font-weight:600;line-height:1.2;text-wrap:balance}
h1{font-size:2.1rem;margin:4px 0 6px;letter-spacing:-.01em}
h2{font-size:1.35rem;margin:48px 0 12px}
h3{font-size:1rem;margin:0 0 6px}
h4{font-size:.93rem;margin:12px 0 2px}
p{margin:0 0 10px;max-width:72ch}
a{color:var(--accent);text-underline-offset:2px}
a:focus-visible,summary:focus-visible,.scroll:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
.kicker{color:var(--accent);font-weight:600;margin:0}
.quiet{color:var(--quiet)}
.lead{font-family:${serif};font-size:1.25rem;line-height:1.4;margin:18px 0 10px}
.air{border-left:3px solid var(--accent);padding-left:12px;color:var(--quiet);font-size:.93rem}
header{border-bottom:1px solid var(--rule);padding-bottom:18px}
footer{margin-top:48px;border-top:1px solid var(--rule);padding-top:14px;font-size:.875rem;color:var(--quiet)}
.badge{display:inline-block;font-family:${sans};font-weight:700;font-size:.8rem;letter-spacing:.02em;white-space:nowrap;border:1.5px solid currentColor;border-radius:3px;padding:0 7px;line-height:1.55}
.badge.act{color:var(--act)}.badge.watch{color:var(--watch)}.badge.note,.badge.none{color:var(--note)}
`;

const lists = `
.scroll{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums;font-size:.93rem}
th,td{text-align:left;vertical-align:top;padding:7px 14px 7px 0;border-bottom:1px solid var(--rule)}
th{font-weight:600;color:var(--quiet);font-size:.82rem;white-space:nowrap}
td.number,th.number{text-align:right}
tbody th{color:inherit;font-size:inherit}
.circuits thead th{white-space:normal;vertical-align:bottom}
.circuits tbody th,.circuits td{white-space:nowrap}
.dense{font-size:.86rem}
.dense th,.dense td{padding-right:10px}
.dense thead th{white-space:normal;vertical-align:bottom;line-height:1.25}
.dense tbody th{color:var(--ink);white-space:normal}
.scroll+p,.ranked+p{margin-top:8px}
.dense .number+:not(.number){padding-left:12px}
.ranked td:first-child{width:2.2em;color:var(--quiet)}
.ranked .where{font-weight:600;min-width:9em}
.ranked .when{white-space:nowrap;color:var(--quiet)}
article{background:var(--card);border:1px solid var(--rule);border-radius:6px;padding:22px 24px 18px;margin:0 0 22px}
article>h3{font-size:1.3rem;margin:0;display:flex;gap:12px;align-items:baseline;flex-wrap:wrap}
.rank{color:var(--quiet);font-weight:400}
.summary{font-size:1.06rem;margin:8px 0 14px;max-width:76ch}
.also{border-top:1px solid var(--rule);margin-top:22px;padding-top:16px}
.columns{display:grid;grid-template-columns:minmax(0,5fr) minmax(0,7fr);gap:8px 40px;margin-top:18px}
dl{display:grid;grid-template-columns:max-content 1fr;gap:5px 16px;margin:0;align-content:start}
dt{color:var(--quiet)}dd{margin:0}
ol,ul{margin:4px 0 10px;padding-left:1.3em}
li{margin:3px 0;max-width:76ch}
ol>li::first-letter{text-transform:uppercase}
.cause{font-weight:600}
.plain{list-style:none;padding:0}
.plain li{margin:7px 0}
.care{font-size:.93rem;border-top:1px solid var(--rule);margin-top:16px;padding-top:10px;color:var(--quiet)}
.care strong{color:var(--ink)}
details{margin-top:12px}
summary{cursor:pointer;color:var(--accent);font-size:.93rem}
`;

const narrow = `
@media (max-width:700px){
.page{padding:18px 14px 48px}
h1{font-size:1.6rem}h2{margin-top:36px}
article{padding:16px 14px;margin-left:-6px;margin-right:-6px}
.columns{grid-template-columns:minmax(0,1fr)}
.row{grid-template-columns:38px minmax(0,1fr) 0}
.axis{margin-left:-8px}
.chart .ends,.ends-space{display:none}
.panel-title,.legend{margin-left:38px}
.legend li.narrow{display:flex}
.chart text.minor{display:none}
.ranked,.ranked tbody,.ranked tr,.ranked td{display:block}
.ranked thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.ranked tr{border-bottom:1px solid var(--rule);padding:10px 0}
.ranked td{border:0;padding:1px 0;width:auto}
.ranked td:first-child{float:left;margin-right:8px}
}
`;

const print = `
@page{margin:14mm}
@media print{
body{background:none;font-size:9.5pt}
h1{font-size:19pt}h2{font-size:12.5pt;margin:22px 0 8px}h3{font-size:10.5pt}
.lead{font-size:11.5pt;margin:10px 0 8px}header{padding-bottom:8px}.air{font-size:8.6pt}
.scroll+p,.ranked+p{font-size:8.6pt}
.on-screen{display:none}
p{max-width:none}
.page{max-width:none;padding:0}
article{border:0;border-top:1.5pt solid ${lightTheme.ink};border-radius:0;padding:10px 0;margin:0 0 10px}
article+article{break-before:page}
.chart{zoom:.76;margin:8px 0}
.columns,.columns h4,.care{font-size:9pt}
.columns{margin-top:8px}
.chart,.columns>div,.summary,.care p,tr,li,footer{break-inside:avoid}
h2,h3,figcaption,.summary{break-after:avoid}
a{color:inherit;text-decoration:none}
details:not([open]){display:none}
.dense{font-size:7.4pt}.dense thead th{font-size:6.8pt}
.dense th,.dense td{padding:4px 6px 4px 0}
.scroll{overflow:visible}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}
}
`;

/** The report's one style sheet. */
export function styleSheet(): string {
  return [themeCss(), page, lists, chartRules(), narrow, print].join('\n');
}
