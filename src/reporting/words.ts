import type { CauseId, FindingKind, Origin, Severity } from '../model/finding.ts';

/** What people read for the contract's words. Never a colour alone: each severity has a word and a shape. */
export const severityWords: Readonly<
  Record<Severity, { readonly word: string; readonly symbol: string; readonly meaning: string }>
> = {
  act: { word: 'Act', symbol: '▲', meaning: 'it will reach its limit, or has' },
  watch: { word: 'Watch', symbol: '◆', meaning: 'look at it on the next visit' },
  note: { word: 'Note', symbol: '○', meaning: 'worth knowing, no visit' },
};

export const originWords: Readonly<Record<Origin, string>> = {
  case: 'the case, truly warm',
  probe: 'the probe, reading wrong',
  defrost: 'the defrost',
  control: 'the control settings',
  rack: 'the rack behind its cases',
  record: 'the record only',
};

export const kindWords: Readonly<Record<FindingKind, string>> = {
  'upward-drift': 'Upward drift',
  'probe-disagreement': 'One probe disagrees',
  'short-cycling': 'Short-cycling',
  'defrost-recovery': 'Slow recovery after defrost',
  'defrost-missed': 'Missed defrosts',
  'rack-pressure': 'Suction pressure',
  superheat: 'Superheat',
  'left-off': 'Left off',
  'record-quality': 'The record',
};

export const causeWords: Readonly<Record<CauseId, string>> = {
  'airflow-or-ice': 'ice or blocked airflow',
  'evaporator-fan': 'evaporator fan',
  underfeeding: 'coil underfed',
  overfeeding: 'coil overfed',
  'door-or-load': 'doors or loading',
  'probe-offset': 'probe off by a step',
  'probe-drift': 'probe creeping off',
  'probe-noise': 'noisy probe or wiring',
  'probe-stuck': 'probe stuck',
  'probe-open-or-short': 'probe open or shorted',
  'probe-moved': 'probe moved from its place',
  'probe-swapped': 'probes swapped',
  'defrost-schedule': 'defrost schedule',
  'defrost-heat': 'defrost heat',
  'defrost-termination': 'defrost termination',
  drain: 'blocked drain',
  'tight-differential': 'differential too tight',
  'circuits-in-step': 'circuits in step',
  'compressor-control': 'compressor control',
  'low-charge': 'low charge',
  'capacity-shortfall': 'compressor capacity short',
  condensing: 'condensing side',
  'set-point': 'set point changed',
  'left-off': 'left off',
  'service-visit': 'a service visit',
  weather: 'weather felt by every case',
  'normal-variation': 'usual variation',
  logging: 'the logging',
};
