import type { SiteFile } from '../site-file/site-file.ts';
import { type GuessNote, sureEnough } from './guess-note.ts';
import type { GuessedUnits } from './guess-units.ts';

export function withUnits(
  { temperature, pressure }: GuessedUnits,
  known: SiteFile | null,
): Pick<SiteFile, 'units'> {
  const units = {
    ...known?.units,
    ...(temperature === null ? {} : { temperature: temperature.unit }),
    ...(pressure === null ? {} : { pressure: pressure.unit }),
  };
  return Object.keys(units).length === 0 ? {} : { units };
}

export function unitNotes({ temperature, pressure }: GuessedUnits): GuessNote[] {
  const note = (key: string, guess: { confidence: number; because: string } | null): GuessNote[] =>
    guess === null ? [] : [{ path: ['units', key], confidence: guess.confidence, because: guess.because }];
  return [...note('temperature', temperature), ...note('pressure', pressure)];
}

export function unitQuestions({ temperature, pressure }: GuessedUnits): string[] {
  const questions: string[] = [];
  if (temperature !== null && temperature.confidence < sureEnough)
    questions.push('Are the temperatures in °F or in °C?');
  if (pressure !== null && pressure.confidence < sureEnough) {
    questions.push('In which unit are the pressures: psig, barg, bar or kPa?');
  }
  return questions;
}
