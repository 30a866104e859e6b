import { dashes, sans } from './theme.ts';

const charts = `
.chart{margin:20px 0 6px}
figcaption{font-weight:600;font-size:.93rem;margin-bottom:6px}
.row{display:grid;grid-template-columns:46px minmax(0,1fr) 132px}
.panel-title{font-size:.8rem;color:var(--quiet);margin:8px 0 2px 46px}
.chart svg{display:block;overflow:visible}
.plot>svg{overflow:hidden}
.chart text{font:12px ${sans};fill:var(--quiet);font-variant-numeric:tabular-nums}
.plot:not(.times){border-bottom:1px solid var(--rule)}
.grid{stroke:var(--rule);stroke-width:1;fill:none;vector-effect:non-scaling-stroke}
.line,.level,.onset{fill:none;vector-effect:non-scaling-stroke;stroke-width:1.4;stroke-linejoin:round}
.line.strong{stroke-width:2.6}
.line.plain{stroke:var(--ink);stroke-width:1.2}
.band.plain{fill:var(--ink)}
.chart text.plain{fill:var(--ink)}
.level{stroke:var(--set-point);stroke-width:1;stroke-dasharray:1 3;stroke-linecap:round}
.level.limit{stroke:var(--act);stroke-dasharray:9 5}
.band{opacity:.13;stroke:none}
.share{fill:var(--series-5);opacity:.55}
.mark{fill:var(--series-5);opacity:.7}
.defrost{fill:var(--defrost)}
.off{fill:var(--rule);opacity:.6}
.span{opacity:.09}.span.act{fill:var(--act)}.span.watch{fill:var(--watch)}.span.note{fill:var(--note)}
.legend .span{opacity:.25}
.onset{stroke-width:1.5}.onset.act{stroke:var(--act)}.onset.watch{stroke:var(--watch)}.onset.note{stroke:var(--note)}
.chart text.onset-text{font-weight:600;paint-order:stroke;stroke:var(--card);stroke-width:4px;stroke-linejoin:round}
.chart text.onset-text.act{fill:var(--act)}.chart text.onset-text.watch{fill:var(--watch)}
.chart text.end.strong{font-weight:700}
.chart text.end.limit{fill:var(--act)}
.legend{list-style:none;display:flex;flex-wrap:wrap;gap:2px 18px;margin:6px 0 0 46px;padding:0;font-size:.8rem;color:var(--quiet)}
.legend li{display:flex;align-items:center;gap:6px;margin:0}
.legend li.narrow{display:none}
`;

function seriesRules(): string {
  return dashes
    .map((dash, slot) => {
      const pattern = dash === 'none' ? '' : `stroke-dasharray:${dash.replaceAll(' ', ',')}`;
      const color = `var(--series-${slot})`;
      return `.line.s${slot}{stroke:${color};${pattern}}.band.s${slot}{fill:${color}}.chart text.s${slot}{fill:${color}}`;
    })
    .join('\n');
}

/** What a chart needs of the style sheet; its colours are the custom properties of the theme. */
export function chartRules(): string {
  return `${charts}\n${seriesRules()}`;
}
