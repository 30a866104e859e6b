import type { CauseId, FindingKind, Origin } from '../../src/model/finding.ts';

/** What a sound diagnosis may call a planted fault, the best answer first. */
export interface FaultMeaning {
  /** What the fault sits on; also decides how its size is measured. */
  readonly scope: 'place' | 'circuit' | 'group';
  readonly kinds: readonly FindingKind[];
  readonly origins: readonly Origin[];
  readonly causes: readonly CauseId[];
  readonly shape: 'creep' | 'step' | 'event';
  /** True where it warms something by a size that can be asked for. */
  readonly sized: boolean;
}

export const faultCatalogue = {
  'iced-end': {
    scope: 'place',
    kinds: ['upward-drift', 'probe-disagreement', 'defrost-recovery'],
    origins: ['case'],
    causes: ['airflow-or-ice', 'drain'],
    shape: 'creep',
    sized: true,
  },
  'fan-failed': {
    scope: 'place',
    kinds: ['probe-disagreement', 'upward-drift'],
    origins: ['case'],
    causes: ['evaporator-fan', 'airflow-or-ice'],
    shape: 'step',
    sized: true,
  },
  'airflow-blocked': {
    scope: 'place',
    kinds: ['upward-drift', 'probe-disagreement', 'defrost-recovery'],
    origins: ['case'],
    causes: ['airflow-or-ice', 'door-or-load', 'evaporator-fan'],
    shape: 'creep',
    sized: true,
  },
  underfeed: {
    scope: 'circuit',
    kinds: ['upward-drift', 'superheat', 'defrost-recovery'],
    origins: ['case'],
    causes: ['underfeeding', 'low-charge'],
    shape: 'creep',
    sized: true,
  },
  'circuit-drift': {
    scope: 'circuit',
    kinds: ['upward-drift', 'defrost-recovery'],
    origins: ['case'],
    causes: ['airflow-or-ice', 'underfeeding', 'door-or-load', 'drain'],
    shape: 'creep',
    sized: true,
  },
  'probe-step': {
    scope: 'place',
    kinds: ['probe-disagreement', 'upward-drift'],
    origins: ['probe'],
    causes: ['probe-offset'],
    shape: 'step',
    sized: true,
  },
  'probe-creep': {
    scope: 'place',
    kinds: ['probe-disagreement', 'upward-drift'],
    origins: ['probe'],
    causes: ['probe-drift'],
    shape: 'creep',
    sized: true,
  },
  'probe-flutter': {
    scope: 'place',
    kinds: ['probe-disagreement', 'record-quality'],
    origins: ['probe'],
    causes: ['probe-noise'],
    shape: 'step',
    sized: false,
  },
  'probe-stuck': {
    scope: 'place',
    kinds: ['probe-disagreement', 'record-quality'],
    origins: ['probe'],
    causes: ['probe-stuck'],
    shape: 'step',
    sized: false,
  },
  'probe-open': {
    scope: 'place',
    kinds: ['probe-disagreement', 'record-quality'],
    origins: ['probe'],
    causes: ['probe-open-or-short'],
    shape: 'step',
    sized: false,
  },
  'probe-moved': {
    scope: 'place',
    kinds: ['probe-disagreement', 'upward-drift'],
    origins: ['probe', 'case'],
    causes: ['probe-moved', 'probe-offset', 'airflow-or-ice', 'evaporator-fan'],
    shape: 'step',
    sized: true,
  },
  'probes-swapped': {
    scope: 'place',
    kinds: ['probe-disagreement', 'record-quality'],
    origins: ['probe', 'record'],
    causes: ['probe-swapped', 'probe-moved', 'logging'],
    shape: 'step',
    sized: false,
  },
  'defrost-missed': {
    scope: 'circuit',
    kinds: ['defrost-missed'],
    origins: ['defrost', 'control'],
    causes: ['defrost-schedule'],
    shape: 'step',
    sized: false,
  },
  'recovery-lengthening': {
    scope: 'circuit',
    kinds: ['defrost-recovery', 'upward-drift'],
    origins: ['defrost', 'case'],
    causes: ['airflow-or-ice', 'underfeeding', 'drain', 'defrost-heat', 'defrost-schedule'],
    shape: 'creep',
    sized: false,
  },
  'heater-failed': {
    scope: 'circuit',
    kinds: ['defrost-recovery', 'upward-drift'],
    origins: ['defrost'],
    causes: ['defrost-heat'],
    shape: 'step',
    sized: false,
  },
  'termination-failed': {
    scope: 'circuit',
    kinds: ['defrost-recovery'],
    origins: ['defrost'],
    causes: ['defrost-termination'],
    shape: 'step',
    sized: false,
  },
  'compressor-short-cycle': {
    scope: 'group',
    kinds: ['short-cycling'],
    origins: ['control', 'rack'],
    causes: ['tight-differential', 'compressor-control'],
    shape: 'step',
    sized: false,
  },
  'low-pressure-trips': {
    scope: 'group',
    kinds: ['short-cycling', 'rack-pressure'],
    origins: ['control', 'rack'],
    causes: ['compressor-control', 'low-charge', 'tight-differential'],
    shape: 'step',
    sized: false,
  },
  'valve-short-cycle': {
    scope: 'circuit',
    kinds: ['short-cycling'],
    origins: ['control'],
    causes: ['tight-differential'],
    shape: 'step',
    sized: false,
  },
  'suction-rise': {
    scope: 'group',
    kinds: ['rack-pressure'],
    origins: ['rack'],
    causes: ['compressor-control', 'capacity-shortfall', 'set-point', 'low-charge'],
    shape: 'creep',
    sized: false,
  },
  'capacity-shortfall': {
    scope: 'group',
    kinds: ['rack-pressure'],
    origins: ['rack'],
    causes: ['capacity-shortfall', 'compressor-control'],
    shape: 'step',
    sized: false,
  },
  'condensing-high': {
    scope: 'group',
    kinds: ['rack-pressure'],
    origins: ['rack'],
    causes: ['condensing'],
    shape: 'step',
    sized: false,
  },
  'left-off': {
    scope: 'circuit',
    kinds: ['left-off'],
    origins: ['control'],
    causes: ['left-off', 'service-visit'],
    shape: 'event',
    sized: false,
  },
  'override-on': {
    scope: 'circuit',
    kinds: ['left-off'],
    origins: ['control'],
    causes: ['left-off', 'service-visit'],
    shape: 'event',
    sized: false,
  },
} as const satisfies { readonly [fault: string]: FaultMeaning };

export type FaultName = keyof typeof faultCatalogue;
export const faultNames = Object.keys(faultCatalogue) as FaultName[];

/** Healthy things that look like trouble. */
export const lookAlikeNames = [
  'set-point-change',
  'heavy-stocking',
  'humid-week',
  'old-offset',
  'warm-spell',
  'night-set-back',
  'long-gap',
  'service-visit',
  'not-connected',
  'weekend-trade',
] as const;
export type LookAlikeName = (typeof lookAlikeNames)[number];
