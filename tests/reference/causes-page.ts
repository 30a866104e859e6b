import { causeAdvice } from '../../src/diagnosis/cause-catalogue.ts';
import type { Hypothesis } from '../../src/diagnosis/naive-bayes.ts';
import { oneProbeCauses } from '../../src/diagnosis/one-probe-causes.ts';
import { wholeCircuitCauses } from '../../src/diagnosis/whole-circuit-causes.ts';
import { causes } from '../../src/model/finding.ts';
import { causeWords } from '../../src/reporting/words.ts';

const list = (items: readonly string[]): string => items.map((item) => `- ${item}`).join('\n');

function table(hypotheses: readonly Hypothesis[]): string {
  const features = Object.keys(hypotheses[0]!.features);
  const rows = hypotheses.map(
    ({ cause, origin, prior, features: expected }) =>
      `| ${cause} | ${origin} | ${prior} | ${features
        .map((name) => {
          const one = expected[name]!;
          return 'share' in one ? `${one.share}` : `${one.mean} ± ${one.deviation}`;
        })
        .join(' | ')} |`,
  );
  return `| cause | origin | prior | ${features.join(' | ')} |
| --- | --- | --- | ${features.map(() => '---').join(' | ')} |
${rows.join('\n')}`;
}

/** docs/reference/causes.md, from the catalogue of causes and the two tables that weigh them. */
export function causesPage(): string {
  const sections = causes.map((cause) => {
    const { checkFirst, bring } = causeAdvice[cause];
    return `## ${cause}

${causeWords[cause][0]!.toUpperCase()}${causeWords[cause].slice(1)}.

Check first:

${list(checkFirst)}
${bring.length === 0 ? '\nNothing to bring.' : `\nBring: ${bring.join(', ')}.`}
`;
  });
  return `# Causes

What a finding may name as its cause, with what to look at first (free checks before tools) and what to bring. The
checks are common practice and defer to local codes, the maker's instructions and licensed work. This page is written
by \`npm run docs\`; a test keeps it equal to the code.

${sections.join('\n')}
# How causes are weighed

Naive Bayes over named features (\`src/diagnosis/naive-bayes.ts\`). A number with ± is the mean and spread of a bump; a
single number is how often a yes is expected. What the features mean is said in
[probe disagreement](../methods/probe-disagreement.md), [upward drift](../methods/upward-drift.md) and
[diagnosis](../methods/diagnosis.md).

## One probe that left its neighbours

${table(oneProbeCauses)}

## A circuit that is warm as a whole

${table(wholeCircuitCauses)}
`;
}
