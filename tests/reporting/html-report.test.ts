import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Record } from '../../src/model/record.ts';
import { htmlReport } from '../../src/reporting/html-report.ts';
import { type Example, exampleOf, finding, healthyExample, troubledExample } from './support/example.ts';

const page = htmlReport(troubledExample());

describe('the one-file report', () => {
  test('fetches nothing and runs no script', () => {
    expect(page).not.toMatch(/<script|<link|<img|<iframe|@import|url\(|\son\w+=/i);
    expect(page.match(/https?:\/\//g)).toBeNull();
  });

  test('allows its own style sheet by hash and nothing else', () => {
    const style = /<style>([\s\S]*?)<\/style>/.exec(page)![1]!;
    const hash = createHash('sha256').update(style).digest('base64');
    expect(page).toContain(`default-src 'none'; style-src 'sha256-${hash}'`);
    expect(page).not.toMatch(/\sstyle=/);
  });

  test('escapes every name that comes from an export', () => {
    const hostile = withHostileNames(troubledExample());
    const text = htmlReport(hostile);
    expect(text).not.toMatch(/<script>|<img|"onload/);
    expect(text).toContain('&lt;script&gt;');
  });

  test('plots every probe of a flagged circuit with its set point, defrosts, valve and suction', () => {
    const article = page.slice(page.indexOf('id="place-1"'), page.indexOf('id="place-2"'));
    for (const slot of ['s0', 's1', 's2']) expect(article).toMatch(new RegExp(`class="line ${slot}`));
    for (const part of [
      'level set-point',
      'class="defrost"',
      'Valve open',
      'Suction pressure',
      'onset act',
    ]) {
      expect(article).toContain(part);
    }
    expect(article).toContain('since Thu 10 Sep');
    expect(article.match(/role="img" aria-label="[^"]{20,}"/g)).toHaveLength(2);
  });

  test('gives the plot as a table too, a row a day', () => {
    const table = /The plot as a table[\s\S]*?<\/table>/.exec(page)![0];
    expect(table.match(/<th scope="row">/g)).toHaveLength(24);
  });

  test('says that air is not food, and defers to local codes', () => {
    expect(page).toContain('not food temperatures');
    expect(page).toContain('Local codes');
  });

  test('holds each flagged circuit against what is normal, the alarm and its limit, in a line each', () => {
    const article = page.slice(page.indexOf('id="place-1"'), page.indexOf('id="place-2"'));
    expect(article).toMatch(/<strong>Normal here\.<\/strong> At the end .* from \d+ quiet days\)/);
    expect(article).toMatch(/<strong>Alarm\.<\/strong> (The alarm in force|A usual alarm) \(/);
    expect(article).toMatch(/<strong>Air above its limit\.<\/strong> .*: the local code decides\./);
  });

  test('of a healthy site says what it rests on and shows every circuit', () => {
    const healthy = htmlReport(healthyExample());
    expect(healthy).toContain('Nothing here needs a visit');
    expect(healthy.match(/nothing found/g)).toHaveLength(5);
    expect(healthy).not.toContain('<article');
  });

  test('says of a circuit that a rack finding stands for that it goes with its rack', () => {
    const healthy = healthyExample();
    const [first, second] = healthy.log.circuits;
    const rack = finding(healthy.log, {
      circuit: null,
      probe: null,
      kind: 'rack-pressure',
      covers: [first!.id],
    });
    const noted = finding(healthy.log, {
      circuit: null,
      probe: null,
      kind: 'rack-pressure',
      severity: 'note',
      covers: [second!.id],
    });
    const shown = htmlReport({ ...healthy, diagnosis: { ...healthy.diagnosis, findings: [rack, noted] } });
    expect(shown.match(/with suction group/g)).toHaveLength(1);
    expect(shown).toContain(`<td><span class="quiet">with suction group ${rack.suctionGroup}</span></td>`);
    expect(shown.match(/nothing found/g)).toHaveLength(4);
  });

  test('stays below 2 MB when all of 13 circuits, logged every minute, are flagged', () => {
    const flagged = exampleOf(
      (log) =>
        log.circuits.map(({ id, probes }) => finding(log, { id, circuit: id, probe: probes[0]!.point })),
      1,
    );
    const bytesACircuit = Buffer.byteLength(htmlReport(flagged)) / flagged.log.circuits.length;
    expect(13 * bytesACircuit).toBeLessThan(1_500_000);
  });
});

function withHostileNames(example: Example): Example {
  const { log } = example;
  const name = `<script>alert(1)</script>"onload='x'<img src=x>`;
  const rename = (record: Record): Record => ({ ...record, point: name });
  const circuits = log.circuits.map((circuit, index) =>
    index > 0
      ? circuit
      : {
          ...circuit,
          name,
          probes: circuit.probes.map((probe) => ({ ...probe, point: name, record: rename(probe.record) })),
        },
  );
  const hostileLog = { ...log, site: name, circuits };
  return {
    ...example,
    log: hostileLog,
    signals: {
      ...example.signals,
      log: hostileLog,
      circuits: example.signals.circuits.map((signals, index) => ({ ...signals, circuit: circuits[index]! })),
    },
    diagnosis: {
      ...example.diagnosis,
      findings: example.diagnosis.findings.map((each) => ({ ...each, summary: name, probe: name })),
    },
  };
}
