import { expect, test } from 'vitest';
import { tokensOf } from '../../../src/importing/naming/tokens.ts';
import { meanings } from '../../../src/importing/naming/vocabulary.ts';

const texts = (name: string): string[] => tokensOf(name).map((token) => token.text);
const meant = (name: string): string[] => tokensOf(name).flatMap((token) => token.meaning ?? []);

test.each([
  ['C01 probe 1', ['c', '01', 'probe', '1']],
  ['M01.air.a', ['m', '01', 'air', 'a']],
  ['AirTempB', ['air', 'temp', 'b']],
  ['DFRStatus', ['dfr', 'status']],
  ['MTcase', ['mt', 'case']],
  ['suctpress', ['suct', 'press']],
  ['temp_1_circuit_4', ['temp', '1', 'circuit', '4']],
  ['Außentemperatur', ['aussen', 'temperatur']],
  ['Tset', ['t', 'set']],
])('%s is read as its words', (name, words) => {
  expect(texts(name)).toEqual(words);
});

test('a unit in the name is no word of it', () => {
  expect(texts('Air A (°F)')).toEqual(['air', 'a']);
  expect(texts('Suction [psig]')).toEqual(['suction']);
  expect(texts('Level %')).toEqual(['level']);
  expect(texts('Air C')).toEqual(['air', 'c']);
});

test('short forms mean what the long word means', () => {
  expect(meant('dfr')).toEqual(meant('Defrost'));
  expect(meant('suct')).toEqual(meant('Suction'));
  expect(meant('Abtauung')).toEqual(meant('dégivrage'));
});

test('low and high pressure as two letters, in French and German', () => {
  expect(meant('Centrale BP')).toContain('suction');
  expect(meant('Verbund ND')).toContain('suction');
  expect(meant('Centrale HP')).toContain('highSide');
});

test('how far a valve is open, in one German word', () => {
  for (const word of ['Ventilöffnung', 'Ventiloeffnung', 'Ventilstellung', 'Öffnungsgrad'])
    expect(meant(`Kühlstelle 02 ${word}`)).toContain('valve');
});

test('goods whose name sounds like a trade word stay goods', () => {
  expect(meant('Cut fruit')).toEqual([]);
  expect(meant('Cut-in')).toEqual(['set', 'set']);
  expect(meant('Produce')).toEqual([]);
});

// Tags and classes read at source: Project Haystack 4.0.0 defs, Brick 1.4.4.
test('the open vocabularies are understood', () => {
  expect(meant('discharge air temp sensor')).toEqual(['discharge', 'air', 'temperature', 'probe']);
  expect(meant('discharge air temp sp')).toContain('set');
  expect(meant('Supply_Air_Temperature_Sensor')).toEqual(['supply', 'air', 'temperature', 'probe']);
  expect(meant('Outside_Air_Temperature_Sensor')[0]).toBe('outdoor');
});

test('no word means two things', () => {
  const seen = new Map<string, string>();
  for (const [meaning, words] of Object.entries(meanings)) {
    for (const word of words.split(' ')) {
      expect(`${word}: ${seen.get(word) ?? meaning}`).toBe(`${word}: ${meaning}`);
      seen.set(word, meaning);
    }
  }
});

test('a very long or strange name is read without harm', () => {
  expect(texts('x'.repeat(100_000)).length).toBeGreaterThan(0);
  expect(texts('((((((((([[[[[{{{{')).toEqual([]);
  expect(texts('__proto__')).toEqual(['proto']);
});
