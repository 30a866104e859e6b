import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'upward-drift',
  title: 'Air that creeps upward',
  requires: 'air probes of a circuit; set point, valve and neighbouring circuits sharpen it',
  minimumDays: 7,
  settings,
};
