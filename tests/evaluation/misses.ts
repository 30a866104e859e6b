import { simulateLumped } from '../../sample-logs/maker/lumped-model/simulate.ts';
import { simulateSections } from '../../sample-logs/maker/section-model/simulate.ts';
import type { EvaluationCase } from './cases.ts';
import type { CaseOutcome, FaultOutcome } from './outcome.ts';
import { circuitPicture } from './picture.ts';
import { sizeOf } from './report.ts';

export interface Miss {
  readonly name: string;
  readonly svg: string;
}

/** Pictures of the worst misses: faults not found, then wrong origins, then false flags. */
export function pictureMisses(
  cases: readonly EvaluationCase[],
  outcomes: readonly CaseOutcome[],
  most: number,
): Miss[] {
  const rank = (one: FaultOutcome): number =>
    one.finding === null ? 0 : one.fault.origins.includes(one.finding.origin as never) ? 9 : 1;
  const wrong = outcomes
    .flatMap((outcome) => outcome.faults.map((fault) => ({ outcome, fault })))
    .filter(({ fault }) => sizeOf(fault) !== 'slight' && rank(fault) < 9)
    .sort((a, b) => rank(a.fault) - rank(b.fault) || b.fault.fault.size - a.fault.fault.size)
    .map(({ outcome, fault }) => ({
      outcome,
      circuit: fault.fault.circuit,
      group: fault.fault.suctionGroup,
      onset: fault.fault.onset,
      title: `${fault.finding === null ? 'missed' : 'wrong origin'}: ${fault.fault.fault} ${sizeOf(fault)} on ${fault.fault.circuit ?? fault.fault.suctionGroup}; said: ${fault.said.map(({ severity, kind, origin }) => `${severity} ${kind} ${origin}`).join(', ') || 'nothing'}`,
    }));
  const cried = outcomes.flatMap((outcome) =>
    outcome.falseFlags.map((flag) => ({
      outcome,
      circuit: flag.circuit,
      group: flag.suctionGroup,
      onset: flag.onset,
      title: `false flag: ${flag.severity} ${flag.kind} ${flag.origin} on ${flag.circuit ?? flag.suctionGroup}; look-alikes: ${outcome.lookAlikes.join(', ')}`,
    })),
  );
  return [...wrong.slice(0, most), ...cried.slice(0, most)].map(
    ({ outcome, circuit, group, onset, title }, i) => {
      const one = cases.find(({ seed }) => seed === outcome.seed)!;
      const store = (one.simulator === 'one' ? simulateSections : simulateLumped)(one.request);
      return {
        name: `${String(i + 1).padStart(2, '0')}-seed-${outcome.seed}.svg`,
        svg: circuitPicture(
          store,
          circuit,
          group,
          onset,
          `seed ${outcome.seed} (${outcome.simulator}) ${title}`,
        ),
      };
    },
  );
}
