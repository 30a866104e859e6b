import { describe, expect, test } from 'vitest';
import { runCli } from './support/run-cli.ts';

describe('the command line itself', () => {
  test('shows help that leads with examples', async () => {
    const { code, out } = await runCli(['--help']);
    expect(code).toBe(0);
    const examples = out.indexOf('rimelog check store.csv');
    expect(examples).toBeGreaterThan(0);
    expect(examples).toBeLessThan(out.indexOf('Usage:'));
    for (const command of ['check', 'normalize', 'draft-site', 'serve'])
      expect(out).toContain(`  ${command}`);
  });

  test('shows the help of one command', async () => {
    const { code, out } = await runCli(['check', '--help']);
    expect(code).toBe(0);
    for (const flag of ['--site', '--from', '--to', '--json', '--html', '--exit-on'])
      expect(out).toContain(flag);
  });

  test('prints its version alone', async () => {
    const { code, out } = await runCli(['--version']);
    expect(code).toBe(0);
    expect(out).toMatch(/^\S+\n$/);
  });

  test.each<[string, string[], RegExp]>([
    ['a misspelt command', ['chekc', 'a.csv'], /Did you mean check\?/],
    ['a misspelt option', ['check', 'a.csv', '--jsn'], /Did you mean --json\?/],
    ['no export', ['check'], /missing required argument 'export'/],
    ['two formats at once', ['check', 'a.csv', '--json', '--html', 'b.html'], /cannot be used with/],
    ['an unknown severity', ['check', 'a.csv', '--exit-on', 'panic'], /Allowed choices are watch, act/],
    ['an unknown time zone', ['check', 'a.csv', '--time-zone', 'Denver'], /America\/Denver/],
    ['a port that is none', ['serve', '--port', 'http'], /0 to 65535/],
    ['no command at all', [], /Usage:/],
  ])('refuses %s with status 2', async (_, args, message) => {
    const { code, out, err } = await runCli(args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
  });
});
