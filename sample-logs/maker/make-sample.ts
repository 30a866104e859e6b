import { gzipSync } from 'node:zlib';
import { siteFileText } from './export/site-file.ts';
import { truthFileText } from './export/truth-file.ts';
import { writeExports } from './export/write-exports.ts';
import { simulateLumped } from './lumped-model/simulate.ts';
import type { Scenario } from './scenarios.ts';
import { simulateSections } from './section-model/simulate.ts';

export interface SampleFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What a compressed file holds, else the file itself: the same on every machine. */
  readonly text: string;
}

/** The files of one sample folder. */
export function makeSample(scenario: Scenario): SampleFile[] {
  const simulate = scenario.simulator === 'one' ? simulateSections : simulateLumped;
  const store = simulate(scenario.request);
  const exports = writeExports(store, scenario.dialect).map(
    ({ name, text }): SampleFile =>
      scenario.compressed
        ? { name: `${name}.gz`, bytes: gzipSync(text, { level: 9 }), text }
        : plain(name, text),
  );
  return [
    ...exports,
    plain('site.yaml', siteFileText(store, scenario.dialect)),
    plain('truth.json', truthFileText(store, scenario.dialect)),
    plain('README.md', readmeText(scenario)),
  ];
}

function plain(name: string, text: string): SampleFile {
  return { name, bytes: Buffer.from(text, 'utf8'), text };
}

function readmeText({ title, planted, request }: Scenario): string {
  return `# ${title}\n\n${request.site} is invented. ${planted}\n`;
}
