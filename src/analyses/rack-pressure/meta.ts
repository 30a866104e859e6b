import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'rack-pressure',
  title: 'Suction and condensing pressure away from target and norm',
  requires:
    'suction pressure of the group; its target, compressors, discharge and outdoor temperature sharpen it',
  minimumDays: 3,
  settings,
};
