import { describe, expect, it } from 'vitest';
import { isoTime, plainRows, written } from './damaged/plain-log.ts';
import { readContent } from './support.ts';

const refused = [
  {
    name: 'times shown as ####',
    content: written({ time: () => '########' }),
    says: /Make the column wider/u,
  },
  {
    name: 'times cut to minutes and seconds',
    content: written({ time: (wallMs) => `${isoTime(wallMs).slice(14)}.0` }),
    says: /format yyyy-mm-dd hh:mm:ss/u,
  },
  {
    name: 'clocks without a date',
    content: written({ time: (wallMs) => isoTime(wallMs).slice(11) }),
    says: /time of day but no date/u,
  },
  {
    name: 'times in no known form',
    content: written({ time: (wallMs) => `shift ${wallMs % 7}` }),
    says: /cells below “Time”, such as “shift \d”/u,
  },
  { name: 'base64', content: btoa('2026-09-03,1\n'.repeat(90)).replace(/.{76}/gu, '$&\n'), says: /base64/u },
  {
    name: 'statements of a database',
    content: "INSERT INTO log VALUES ('a', 1, 2);\n".repeat(20),
    says: /SQL dump/u,
  },
  {
    name: 'pairs of name and value',
    content: plainRows()
      .slice(0, 40)
      .map(({ wallMs, cells }) => `t=${wallMs} air=${cells[0]} set=${cells[2]}`)
      .join('\n'),
    says: /pairs of name and value/u,
  },
  {
    name: 'a letter',
    content: 'The case was warm again.\n'.repeat(20),
    says: /no table with a time in each row/u,
  },
];

describe('a text without a table is refused with what it seems to be', () => {
  it.each(refused)('$name', async ({ content, says }) => {
    await expect(readContent(content)).rejects.toMatchObject({
      code: 'no-table',
      message: expect.stringMatching(says),
    });
  });
});
