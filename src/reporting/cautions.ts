import type { CauseId, Finding, Origin } from '../model/finding.ts';

/** A way in which the work that a finding leads to can hurt, and what to do about it. */
export interface Caution {
  readonly hazard: string;
  readonly advice: string;
  readonly causes: readonly CauseId[];
  readonly origins: readonly Origin[];
}

const cautions: readonly Caution[] = [
  {
    hazard: 'Refrigerant and pressure',
    advice:
      'Opening the circuit, adding or recovering refrigerant is for people licensed to do it. Liquid burns cold, ' +
      'vapour displaces air in a pit or plant room, and a closed section filled with liquid can burst.',
    causes: [
      'underfeeding',
      'overfeeding',
      'low-charge',
      'capacity-shortfall',
      'condensing',
      'compressor-control',
    ],
    origins: ['rack'],
  },
  {
    hazard: 'Electricity',
    advice:
      'Isolate, lock, tag and prove dead before reaching into a case, a panel or a heater circuit. Controls and ' +
      'compressors start by themselves.',
    causes: [
      'evaporator-fan',
      'defrost-heat',
      'defrost-termination',
      'compressor-control',
      'capacity-shortfall',
      'probe-open-or-short',
    ],
    origins: ['rack', 'control'],
  },
  {
    hazard: 'Fans and sharp coils',
    advice: 'Fans turn without warning and coil fins cut: stop the fans first, wear gloves.',
    causes: ['airflow-or-ice', 'evaporator-fan', 'drain', 'defrost-heat'],
    origins: [],
  },
  {
    hazard: 'Ice, hot water and wet floors',
    advice:
      'Melt ice with water, never with a flame or a tool that can pierce the coil. Keep water off live parts, ' +
      'mind scalds, and rope off the wet floor: shoppers walk there.',
    causes: ['airflow-or-ice', 'drain', 'defrost-schedule', 'defrost-heat'],
    origins: ['defrost'],
  },
];

/** Stands above every list of cautions. */
export const cautionsDefer =
  "Local codes, the site rules and the maker's instructions come first; do only what you are licensed and trained for.";

/** The cautions that the probable work behind these findings calls for; notes lead to no work. */
export function cautionsFor(findings: readonly Finding[]): readonly Caution[] {
  const worked = findings.filter((finding) => finding.severity !== 'note');
  const causes = new Set(worked.flatMap((finding) => finding.causes.map(({ cause }) => cause)));
  const origins = new Set(worked.map(({ origin }) => origin));
  return cautions.filter(
    (caution) =>
      caution.causes.some((cause) => causes.has(cause)) ||
      caution.origins.some((origin) => origins.has(origin)),
  );
}
