import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'superheat',
  title: 'Coils that are starved or flooded, and valves that hunt',
  requires: 'a superheat column, or coil outlet, suction pressure and refrigerant; the valve; the set point',
  minimumDays: 2,
  settings,
};
