import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'probe-disagreement',
  title: 'One probe disagrees with its neighbours',
  requires: 'two or more air probes on one circuit, logged every 15 minutes or faster',
  minimumDays: 5,
  settings,
};
