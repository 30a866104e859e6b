import { numbersFrom, stampOf, writeLines } from './write-lines.ts';

export interface WideExport {
  readonly circuits: number;
  readonly months: number;
}

const minutesAMonth = 31 * 1440;
const defrostEvery = 360;
const defrostMinutes = 25;

interface Case {
  readonly setPoint: number;
  readonly delay: number;
  lift: number;
  open: number;
  wait: number;
}

/**
 * Writes a wide export at one minute, one column a point, with four troubles in it: circuit 4 creeps up, a probe of
 * circuit 6 drifts off, circuit 8 recovers slowly, the valve of circuit 12 short-cycles.
 */
export async function writeWideExport(file: string, { circuits, months }: WideExport): Promise<void> {
  const random = numbersFrom(20_260_101);
  const noise = (): number => random() + random() + random() - 1.5;
  const names = Array.from({ length: circuits }, (_, at) => `C${String(at + 1).padStart(2, '0')}`);
  const header = [
    'time',
    ...names.flatMap((name) => [
      ...[1, 2, 3].map((probe) => `${name} probe ${probe}`),
      `${name} defrost`,
      `${name} valve`,
    ]),
    'R1 suction',
    'R1 discharge',
    'R1 comp 1',
    'R1 comp 2',
    'R1 fan 1',
  ];
  const cases = names.map(
    (_, at): Case => ({
      setPoint: at % 2 === 0 ? -22 : -2,
      delay: Math.floor(random() * defrostEvery),
      lift: 0,
      open: 0,
      wait: 0,
    }),
  );
  const machines = [9, 2].map((shortest) => ({ shortest, runs: 0, wait: 0 }));
  await writeLines(file, header.join(','), months * minutesAMonth, (minute) => {
    const days = minute / 1440;
    const cells: string[] = [stampOf(minute)];
    for (const [at, one] of cases.entries()) {
      const defrosting = (minute + one.delay) % defrostEvery < defrostMinutes;
      const share = defrosting ? 0.08 : at === 7 ? 0.015 : 0.06;
      one.lift += ((defrosting ? 11 : 0) - one.lift) * share;
      if (one.wait-- <= 0) {
        one.open = 1 - one.open;
        one.wait = (at === 11 ? 1 : 4) + Math.floor(5 * random());
      }
      const creep = at === 3 ? 0.06 * (days % 31) : 0;
      const air =
        one.setPoint + one.lift + creep + (one.open ? -0.4 : 0.4) + 0.5 * Math.sin(2 * Math.PI * days);
      for (const probe of [0, 1, 2]) {
        const drift = at === 5 && probe === 1 ? 0.058 * (days % 31) : 0;
        cells.push(random() < 0.001 ? '' : (air + drift + 0.25 * probe + 0.5 * noise()).toFixed(2));
      }
      cells.push(defrosting ? '1' : '0', defrosting ? '0' : String(one.open));
    }
    for (const machine of machines) {
      if (machine.wait-- > 0) continue;
      machine.runs = 1 - machine.runs;
      machine.wait = machine.shortest + Math.floor(8 * random());
    }
    cells.push((1.8 + 0.2 * noise()).toFixed(3), (12 + 1.2 * noise()).toFixed(2));
    cells.push(...machines.map(({ runs }) => String(runs)), '1');
    return cells.join(',');
  });
}
