import type { AnalysisMeta } from '../analysis.ts';
import { settings } from './settings.ts';

export const meta: AnalysisMeta = {
  id: 'record-quality',
  title: 'The record itself',
  requires: 'any export',
  minimumDays: 0,
  settings,
};
