import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'short-cycling',
  title: 'Machines and valves that start too often',
  requires: 'run status, power or current of compressors, or an on/off valve; else suction pressure',
  minimumDays: 2,
  settings,
};
