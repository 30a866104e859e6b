import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'left-off',
  title: 'Circuits, overrides and set points left as a visit left them',
  requires: 'air probes; the valve tells a stop and an override apart from a case that is merely warm',
  minimumDays: 1,
  settings,
};
