import type { AnalysisMeta } from '../../src/analyses/analysis.ts';
import { analyses } from '../../src/analyses/registry.ts';

/** Every analysis once, in the order of the registry. */
export function analysisMetas(): AnalysisMeta[] {
  return [...new Set(analyses.map(({ meta }) => meta))];
}

/** docs/reference/settings.md, from the settings that the analyses carry. */
export function settingsPage(): string {
  const sections = analysisMetas().map(
    (meta) => `## ${meta.title}

\`${meta.id}\` · [method](../methods/${meta.id}.md) · needs ${meta.requires}; at least ${meta.minimumDays} days.

| setting | value | unit | what it is | where it comes from |
| --- | --- | --- | --- | --- |
${Object.entries(meta.settings)
  .map(([name, one]) => `| ${name} | ${one.value} | \`${one.unit}\` | ${one.meaning} | ${one.source} |`)
  .join('\n')}
`,
  );
  return `# Settings

The thresholds of every analysis, in inside units (temperature differences in kelvin: 1 K is 1.8 °F; units as UCUM
codes). This page is written by \`npm run docs\` from \`src/analyses/*/settings.ts\`; a test keeps them equal.

${sections.join('\n')}`;
}
