import type { Measure } from '../model/evidence.ts';
import type { Log } from '../model/log.ts';
import {
  formatDays,
  formatDifference,
  formatMinutes,
  formatPressure,
  formatPressureDifference,
  formatRate,
  formatTemperature,
} from '../units/display.ts';
import { formatNumber } from '../units/format-number.ts';

type SiteUnits = Pick<Log, 'units' | 'atmosphere'>;

/** Words in the name of a measure in kPa that make it a difference, to which no atmosphere belongs. */
const differenceWords = /error|rise|above|below|difference|excess|shortfall|spread|swing|departure|band|per/i;

function plain(value: number, unit: string): string {
  const decimals = Number.isInteger(value) || Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  const text = formatNumber(value, decimals);
  return unit === '' ? text : `${text} ${unit}`;
}

/** An annotation of UCUM reads as its words: `{starts}/h` is `starts an hour`. */
function unitInWords(code: string): string {
  return code
    .replace(/\{(\w+)\}/g, '$1')
    .replace(/\/h$/, ' an hour')
    .replace(/\/d$/, ' a day')
    .replace(/^1$/, '')
    .trim();
}

function displayValue(value: number, name: string, unit: string, site: SiteUnits): string {
  if (!Number.isFinite(value)) return 'unknown';
  switch (unit) {
    case 'Cel':
      return formatTemperature(value, site.units);
    case 'K':
      return formatDifference(value, site.units);
    case '%/d':
      return `${formatNumber(value, 1)} % a day`;
    case 'K/d':
      return formatRate(value, site.units);
    case 'K.h':
      return `${formatDifference(value, site.units)} · h`;
    case 'kPa':
      return differenceWords.test(name)
        ? formatPressureDifference(value, site.units)
        : formatPressure(value, site.units, site.atmosphere);
    case 'kPa{difference}':
      return formatPressureDifference(value, site.units);
    case 'K/min':
      return `${formatDifference(value, site.units)} a minute`;
    case 'kPa/d':
      return `${formatPressureDifference(value, site.units)} a day`;
    case 'min':
      return formatMinutes(value);
    case 'h':
      return formatMinutes(value * 60);
    case 'd':
      return formatDays(value);
    case '%':
      return `${formatNumber(value, Math.abs(value) < 10 && !Number.isInteger(value) ? 1 : 0)} %`;
    default:
      return plain(value, unitInWords(unit));
  }
}

/** A measure in the site's units with its interval: `0.41 °F a day (0.33 to 0.49)`, or `6 days (2 days at the least)` where it has no upper end. */
export function displayMeasure({ name, value, low, high, unit }: Measure, site: SiteUnits): string {
  const main = displayValue(value, name, unit, site);
  if (low === null || !Number.isFinite(low)) return main;
  const lowText = displayValue(low, name, unit, site);
  if (high === null) return `${main} (${lowText} at the least)`;
  if (!Number.isFinite(high)) return main;
  const highText = displayValue(high, name, unit, site);
  const sign = main.replace(/^-?[\d.,]+/, '');
  const shared = sign !== '' && lowText.endsWith(sign) && highText.endsWith(sign);
  const bare = (text: string): string => (shared ? text.slice(0, text.length - sign.length) : text);
  return `${main} (${bare(lowText)} to ${bare(highText)})`;
}

/** `defrostOffsetRatio` reads `defrost offset ratio`. */
export function measureTitle(name: string): string {
  return name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll(/[-_]/g, ' ')
    .toLowerCase();
}
