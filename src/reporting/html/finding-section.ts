import type { Finding, RankedCause, Severity } from '../../model/finding.ts';
import type { Log } from '../../model/log.ts';
import { displayMeasure, measureTitle } from '../display-measure.ts';
import { findingFacts } from '../finding-facts.ts';
import { repeatsCause } from '../report-order.ts';
import { causeWords, originWords, severityWords } from '../words.ts';
import { type Html, html } from './escape.ts';

export function severityMark(severity: Severity): Html {
  const { symbol, word } = severityWords[severity];
  return html`<span class="badge ${severity}">${symbol} ${word}</span>`;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** Facts on one side, probable causes and what to do on the other. */
export function findingDetails(finding: Finding, lead: Finding, log: Log): Html {
  return html`<div class="columns"><div>${factList(finding, log)}${notThis(finding)}</div><div>${repeatsCause(finding, lead) ? html`<p>Probably the same: ${causeWords[lead.causes[0]!.cause]}.</p>` : causeList(finding)}</div></div>
${measureTable(finding, log)}`;
}

function factList(finding: Finding, log: Log): Html {
  const facts = findingFacts(finding, log).map(({ label, text }) => html`<dt>${label}</dt><dd>${text}</dd>`);
  const covers =
    finding.covers.length === 0 ? null : html`<dt>covers</dt><dd>${finding.covers.join(', ')}</dd>`;
  return html`<dl><dt>it is</dt><dd>${originWords[finding.origin]}</dd>${facts}${covers}</dl>`;
}

function causeList({ causes, wouldDecide }: Finding): Html {
  const [first, ...others] = causes;
  if (first === undefined) return html``;
  return html`<p><span class="cause">Probably ${causeWords[first.cause]}</span> (${percent(first.likelihood)})${first.because === '' ? null : html`: ${first.because}`}</p>
${steps(first)}
${others.length === 0 ? null : html`<p class="quiet">Or else: ${others.map(({ cause, likelihood }) => `${causeWords[cause]} (${percent(likelihood)})`).join(', ')}.</p>`}
${wouldDecide === null ? null : html`<p><span class="cause">What would decide it:</span> ${wouldDecide}</p>`}`;
}

function steps({ checkFirst, bring }: RankedCause): Html {
  return html`${checkFirst.length === 0 ? null : html`<h4>Check first</h4><ol>${checkFirst.map((check) => html`<li>${check}</li>`)}</ol>`}
${bring.length === 0 ? null : html`<p><span class="cause">Bring:</span> ${bring.join(', ')}</p>`}`;
}

function notThis({ notThis: lookalikes }: Finding): Html | null {
  if (lookalikes.length === 0) return null;
  return html`<h4>Considered, and not this</h4><ul>${lookalikes.map((each) => html`<li>${each}</li>`)}</ul>`;
}

function measureTable({ measures }: Finding, log: Log): Html | null {
  const known = measures.filter(({ value }) => Number.isFinite(value));
  if (known.length === 0) return null;
  return html`<details><summary>What was measured</summary><table><thead><tr><th scope="col">Measure</th><th scope="col">Value, with its interval where known</th></tr></thead><tbody>${known.map(
    (measure) =>
      html`<tr><td>${measureTitle(measure.name)}</td><td>${displayMeasure(measure, log)}</td></tr>`,
  )}</tbody></table></details>`;
}
