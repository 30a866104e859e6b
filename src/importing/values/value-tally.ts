import type { ExportUnit } from '../../units/export-units.ts';
import type { IssueLog } from '../issues/issue-log.ts';
import { type GrowingNumbers, growingCounts } from '../scan/growing-numbers.ts';
import type { CellReader } from './cell-reader.ts';
import { visibleText } from './clean-text.ts';

/**
 * States are kept among the numbers of a column until the whole column is known, as values that no reading
 * has: only then is it clear whether the word stood in a column of states or in one of numbers.
 */
export const stateOn = Number.POSITIVE_INFINITY;
export const stateOff = Number.NEGATIVE_INFINITY;
export const stateCooling = Number.MAX_VALUE;
export const stateDefrost = -Number.MAX_VALUE;

/** Cells of one kind: how many, the first line, some as written. */
export interface Noted {
  count: number;
  line: number | null;
  readonly examples: string[];
}

const mostExamples = 3;

function nothingNoted(): Noted {
  return { count: 0, line: null, examples: [] };
}

function note(noted: Noted, line: number, text: string): void {
  noted.count++;
  noted.line ??= line;
  if (noted.examples.length === mostExamples || noted.examples.includes(text)) return;
  const shown = text.trim();
  if (!noted.examples.includes(shown)) noted.examples.push(shown);
}

/** A unit that the export names from reading `from` on. */
export interface UnitSegment {
  readonly from: number;
  readonly unit: ExportUnit;
  readonly line: number;
}

/** What the cells of one point said besides plain numbers. */
export class ValueTally {
  readonly name: string;
  readonly order: number;
  unit: ExportUnit | null;
  unitSource: 'header' | 'units-row' | 'cell' | null;
  readonly states = nothingNoted();
  readonly texts = nothingNoted();
  sawDefrost = false;
  rejected = 0;
  /** Readings, by index, whose cell holds a word that is no value. */
  wordsAt: GrowingNumbers<Uint32Array<ArrayBuffer>> | null = null;
  readonly unitSegments: UnitSegment[] = [];

  constructor(name: string, order: number, unit: ExportUnit | null, unitSource: ValueTally['unitSource']) {
    this.name = name;
    this.order = order;
    this.unit = unit;
    this.unitSource = unitSource;
  }

  /** The number to keep for a cell of text; NaN where it gives no reading. `index` counts the readings. */
  take(text: string, cells: CellReader, index: number, line: number, issues: IssueLog): number {
    const reading = cells.read(text);
    switch (reading.kind) {
      case 'empty':
        return Number.NaN;
      case 'number':
        if (reading.unit !== null) this.takeUnit(reading.unit, index, line);
        if (reading.evidence === 'comma' && cells.decimalMark === '.') {
          issues.add('decimal-marks-mixed', { line, column: this.name, example: text });
        }
        if (reading.marked) issues.add('value-marked', { line, column: this.name, example: text });
        if (reading.ambiguous) issues.ambiguousNumber ??= visibleText(text);
        return reading.value;
      case 'on':
        note(this.states, line, text);
        return stateOn;
      case 'off':
        note(this.states, line, text);
        return stateOff;
      case 'cooling':
        note(this.states, line, text);
        return stateCooling;
      case 'defrost':
        note(this.states, line, text);
        this.sawDefrost = true;
        return stateDefrost;
      case 'text':
        note(this.texts, line, text);
        this.noteWord(index);
        return Number.NaN;
      default:
        this.rejected++;
        this.noteWord(index);
        issues.add(
          reading.kind === 'missing'
            ? 'missing-word'
            : reading.kind === 'fault'
              ? 'fault-word'
              : 'value-overflow',
          {
            line,
            column: this.name,
            example: text,
          },
        );
        return Number.NaN;
    }
  }

  private noteWord(index: number): void {
    this.wordsAt ??= growingCounts();
    this.wordsAt.push(index);
  }

  takeUnit(unit: ExportUnit, index: number, line: number): void {
    const last = this.unitSegments.at(-1);
    if (last === undefined ? unit === this.unit : last.unit === unit) return;
    this.unitSegments.push({ from: index, unit, line });
  }
}
