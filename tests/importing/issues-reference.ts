import { issueCatalogue } from '../../src/importing/issues/catalogue.ts';
import type { IssueMeaning } from '../../src/importing/issues/issue-meaning.ts';

const sections: readonly {
  readonly effect: IssueMeaning['effect'];
  readonly title: string;
  readonly intro: string;
}[] = [
  {
    effect: 'row',
    title: 'Rows left out',
    intro: 'Counted in `rowsRejected`, and their values in `valuesRejected`.',
  },
  {
    effect: 'value',
    title: 'Values left out',
    intro: 'Counted in `valuesRejected`. The rest of the row is used.',
  },
  { effect: 'note', title: 'Worth knowing', intro: 'Nothing was left out.' },
  {
    effect: 'refusal',
    title: 'Refusals',
    intro: 'The whole file, or the call, cannot be used (exit status 2).',
  },
];

/** The text of docs/reference/import-issues.md, from the catalogue. */
export function issuesReference(): string {
  const lines = [
    '# What the import report says',
    '',
    'Every row and every value of an export is either imported or counted with a reason. Each reason has a code that',
    'stays the same between versions. Line numbers count the lines of the file as you have it, from 1. Where a file',
    'could be read in two ways, the report says which was taken, why, and the flag that takes the other.',
    '',
    'A test keeps this page equal to the code.',
  ];
  for (const { effect, title, intro } of sections) {
    lines.push(
      '',
      `## ${title}`,
      '',
      intro,
      '',
      '| Code | What happened | What it means | What to do |',
      '| --- | --- | --- | --- |',
    );
    for (const [code, issue] of Object.entries<IssueMeaning>(issueCatalogue)) {
      if (issue.effect !== effect) continue;
      lines.push(`| \`${code}\` | ${sentence(issue.what)} | ${issue.meaning} | ${issue.remedy} |`);
    }
  }
  return `${lines.join('\n')}\n`;
}

function sentence(text: string): string {
  return `${text[0]!.toUpperCase()}${text.slice(1)}.`;
}
