import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'defrost-recovery',
  title: 'Defrosts that fail, and air that comes back slowly after them',
  requires: 'air probes; a defrost status sharpens it, the schedule or the shape of the air stands in for it',
  minimumDays: 3,
  settings,
};
