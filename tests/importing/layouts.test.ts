import { describe, expect, it } from 'vitest';
import { assembleLog } from '../../src/importing/assemble.ts';
import { codesOf, normalized, onlyReport, readContent } from './support.ts';

const utc = { zone: 'UTC' };
const points = async (content: string): Promise<string[]> =>
  (await readContent(content, utc)).columns.map(({ point }) => point);
const minute = (at: number): string =>
  `2026-09-01 ${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`;

describe('layouts', () => {
  it('two header rows name the group and the point', async () => {
    const content = `,M01,,M02,\nTime,air A,air B,air A,air B\n${Array.from({ length: 9 }, (_, at) => `${minute(at)},1.5,2.5,3.5,${at}.5`).join('\n')}\n`;
    expect(await points(content)).toEqual(['M01 air A', 'M01 air B', 'M02 air A', 'M02 air B']);
  });

  it('a second table below the first is read as well', async () => {
    const rows = (offset: number) =>
      Array.from({ length: 12 }, (_, at) => `${minute(at)},${at + offset}.5,${at + offset}.25`).join('\n');
    const content = `Circuit M01\nTime,M01 air A,M01 air B\n${rows(30)}\n\nCircuit M02\nTime,M02 air A,M02 air B\n${rows(50)}\n`;
    const readings = await readContent(content, utc);
    expect(readings.columns.map(({ point }) => point)).toEqual([
      'M01 air A',
      'M01 air B',
      'M02 air A',
      'M02 air B',
    ]);
    expect(normalized(readings).split('\n')).toHaveLength(2 + 48);
    expect(codesOf(readings)).toEqual(expect.arrayContaining(['preamble', 'second-table']));
    expect(onlyReport(readings).issues.find(({ code }) => code === 'second-table')!.line).toBe(17);
  });

  it('a second table of another width and stamp is read as well', async () => {
    const first = Array.from({ length: 12 }, (_, at) => `${minute(at)},${at}.5`).join('\n');
    const second = Array.from(
      { length: 12 },
      (_, at) => `${minute(at)},${at % 2 ? 'ON' : 'OFF'},40.${at}`,
    ).join('\n');
    expect(await points(`Time,Air\n${first}\nTime,Fan,Suction psig\n${second}\n`)).toEqual([
      'Air',
      'Fan',
      'Suction psig',
    ]);
  });

  it('a log of changes is marked as one and keeps its own times', async () => {
    let at = 0;
    let seed = 7;
    const rows = Array.from({ length: 200 }, (_, index) => {
      seed = (seed * 16_807) % 2_147_483_647;
      at += seed % 2 === 0 ? 1 : 3 + (seed % 11);
      return `${minute(at % 1440).replace('-01 ', `-0${1 + Math.floor(at / 1440)} `)},M01 ${index % 2 ? 'air' : 'liquid'},${index % 2 ? (30 + index * 0.1).toFixed(1) : index % 4 ? 'OPEN' : 'CLOSED'}`;
    });
    const readings = await readContent(`time,point,value\n${rows.join('\n')}\n`, utc);
    expect(readings.columns.map(({ point, logging, status }) => [point, logging, status])).toEqual([
      ['M01 liquid', 'change-of-value', true],
      ['M01 air', 'change-of-value', false],
    ]);
    expect(readings.columns[0]!.times.length + readings.columns[1]!.times.length).toBe(200);
  });

  it('a fault word in a log of changes ends the value that was in force', async () => {
    const lines = Array.from({ length: 400 }, (_, at) => {
      const value = at % 7 < 4 ? (36 + (at % 7)).toFixed(1) : null;
      const air = at >= 200 ? (at % 60 === 20 ? `${minute(at)},M01 air,FAIL` : '') : '';
      return [
        value === null ? '' : `${minute(at)},M02 air,${value}`,
        at < 200 && value !== null ? `${minute(at)},M01 air,${value}` : air,
      ];
    });
    const rows = lines.flat().filter((line) => line !== '');
    const readings = await readContent(`time,point,value\n${rows.join('\n')}\n`, utc);
    const air = readings.columns.find(({ point }) => point === 'M01 air')!;
    expect(air.logging).toBe('change-of-value');
    expect(air.values.findIndex(Number.isNaN)).toBe(air.values.length - 1);
    expect(new Date(air.times.at(-1)!).toISOString()).toBe('2026-09-01T03:20:00.000Z');
    const { log } = assembleLog(readings, { circuits: [{ id: 'M01', probes: ['M01 air'] }] });
    const record = log.circuits[0]!.probes[0]!.record.values;
    expect(record.findIndex(Number.isNaN)).toBe(200);
    expect(record.subarray(200).every(Number.isNaN)).toBe(true);
    expect(normalized(readings)).not.toContain('NaN');
  });

  it('a wide log of changes with empty cells is marked as one', async () => {
    let seed = 3;
    const rows = Array.from({ length: 300 }, (_, at) => {
      seed = (seed * 16_807) % 2_147_483_647;
      return `${minute(at)},${seed % 7 === 0 ? (30 + at * 0.01).toFixed(2) : ''},${(40 + (at % 5)).toFixed(1)}`;
    });
    const readings = await readContent(`time,a,b\n${rows.join('\n')}\n`, utc);
    expect(readings.columns.map(({ logging }) => logging)).toEqual(['change-of-value', 'sampled']);
  });

  it('a fault word in a wide log of changes ends the value that was in force, for its point alone', async () => {
    const value = (at: number, base: number): string => (at % 7 < 4 ? (base + (at % 7)).toFixed(1) : '');
    const rows = Array.from({ length: 400 }, (_, at) => {
      const air =
        at < 200
          ? value(at, 36)
          : at === 220
            ? 'FAULT'
            : at === 300
              ? 'OPEN'
              : at >= 350
                ? value(at, 36)
                : '';
      return `${minute(at)},${air},${value(at, 38)},${(45 + (at % 5)).toFixed(1)}`;
    });
    const readings = await readContent(`time,M01 air,M02 air,S1 suction\n${rows.join('\n')}\n`, utc);
    expect(readings.columns.map(({ logging }) => logging)).toEqual([
      'change-of-value',
      'change-of-value',
      'sampled',
    ]);
    expect(codesOf(readings)).toEqual(['fault-word', 'state-word-in-number-column']);
    const report = onlyReport(readings);
    expect(report.values - report.valuesRejected).toBe(normalized(readings).split('\n').length - 2);
    const circuits = ['M01', 'M02'].map((id) => ({ id, probes: [`${id} air`] }));
    const { log } = assembleLog(readings, { circuits });
    const [faulty, sound] = log.circuits.map(({ probes }) => probes[0]!.record.values);
    expect(faulty!.findIndex(Number.isNaN)).toBe(220);
    expect(faulty!.subarray(220, 350).every(Number.isNaN)).toBe(true);
    expect(faulty!.subarray(350).some(Number.isNaN)).toBe(false);
    expect(sound!.some(Number.isNaN)).toBe(false);
  });

  it('circuit and point columns together name a point of a long export', async () => {
    const rows = Array.from({ length: 6 }, (_, at) =>
      ['M01', 'M02'].map((circuit) => `${minute(at)},${circuit},Air,${at}.5,°F`).join('\n'),
    );
    const readings = await readContent(`Time,Circuit,Point,Value,Unit\n${rows.join('\n')}\n`, utc);
    expect(readings.columns.map(({ point, unit }) => [point, unit])).toEqual([
      ['M01 Air', 'degF'],
      ['M02 Air', 'degF'],
    ]);
  });

  it('a bad quality leaves the value out', async () => {
    const rows = Array.from(
      { length: 10 },
      (_, at) => `${minute(at)},M01 air,${at}.5,${at === 4 ? 'Bad' : 'Good'}`,
    );
    const readings = await readContent(`Time,Point,Value,Quality\n${rows.join('\n')}\n`, utc);
    expect(onlyReport(readings)).toMatchObject({ values: 10, valuesRejected: 1 });
    expect(codesOf(readings)).toEqual(['quality-bad']);
  });

  it('a quality of 0 among those of 192 leaves the value out', async () => {
    const rows = Array.from({ length: 10 }, (_, at) => `${minute(at)},M01 air,${at}.5,${at === 4 ? 0 : 192}`);
    const readings = await readContent(`Time,Point,Value,Quality\n${rows.join('\n')}\n`, utc);
    expect(codesOf(readings)).toEqual(['quality-bad']);
  });

  it('columns called A and C are columns, no units', async () => {
    expect(await points(`Time,A,C\n${minute(0)},1.5,2.5\n${minute(1)},1.5,2.5\n`)).toEqual(['A', 'C']);
  });

  it('remarks beside one column of values make no long export', async () => {
    const rows = Array.from(
      { length: 20 },
      (_, at) => `${minute(at)},${at}.5,${at % 7 === 0 ? 'door open' : at % 5 === 0 ? 'quiet' : ''}`,
    );
    expect(await points(`Time,Air,Remark\n${rows.join('\n')}\n`)).toEqual(['Air', 'Remark']);
  });

  it('a unit in the cells that changes is converted and said', async () => {
    const rows = Array.from(
      { length: 40 },
      (_, at) => `${minute(at)},${at < 20 ? `${36 + (at % 3)} °F` : `${2 + (at % 3)} °C`}`,
    );
    const readings = await readContent(`Time,Air\n${rows.join('\n')}\n`, utc);
    expect(readings.columns[0]!.unit).toBe('degF');
    expect([...readings.columns[0]!.values.slice(18, 23)]).toEqual([36, 37, 39.2, 35.6, 37.4]);
    const report = onlyReport(readings);
    expect(report.issues.find(({ code }) => code === 'unit-changed')).toMatchObject({ line: 22, count: 20 });
    expect(report.choices.some(({ override }) => override === '--unit-change reject')).toBe(true);
  });

  it('a set point that moves, an off power and a frozen case at -22 °F are no rails', async () => {
    const rows = Array.from(
      { length: 200 },
      (_, at) =>
        `${minute(at)},${at < 150 ? 36 : 28},${at % 9 < 4 ? 0 : 73 + (at % 5)},${(-22 + Math.sin(at)).toFixed(1)}`,
    );
    const readings = await readContent(`Time,Set (°F),Power (W),Frozen air (°F)\n${rows.join('\n')}\n`, utc);
    expect(onlyReport(readings).valuesRejected).toBe(0);
  });

  it('an on/off column with a word for defrost takes cooling for off', async () => {
    const rows = Array.from(
      { length: 12 },
      (_, at) => `${minute(at)},${at < 8 ? 'Refrig' : 'Defrost'},${at % 2 ? 'Cooling' : 'Idle'}`,
    );
    const readings = await readContent(`Time,Mode,Call\n${rows.join('\n')}\n`, utc);
    expect([...readings.columns[0]!.values]).toEqual([...new Array(8).fill(0), ...new Array(4).fill(1)]);
    expect([...readings.columns[1]!.values.slice(0, 4)]).toEqual([0, 1, 0, 1]);
  });

  it('reads every stage of a state in words: satisfied and pulldown are none of its defrost, drip and fan delay are', async () => {
    const stages = [
      'Satisfied',
      'Calling',
      'Satisfied',
      'Defrost',
      'Drip',
      'Fan Delay',
      'Pulldown',
      'Cooling',
    ];
    const rows = [...stages, ...stages].map((stage, at) => `${minute(at)},${stage}`);
    const readings = await readContent(`Time,State\n${rows.join('\n')}\n`, utc);
    expect([...readings.columns[0]!.values.slice(0, 8)]).toEqual([0, 0, 0, 1, 1, 1, 0, 0]);
    expect(onlyReport(readings).valuesRejected).toBe(0);
  });
});
