import type { FileReport } from '../../model/import-report.ts';
import { delimiterNames, detectDecimalMark, detectDialect } from '../dialect/detect-dialect.ts';
import { detectEncoding, type EncodingVerdict } from '../encoding/detect-encoding.ts';
import { refuseBinary, refuseForeignFile } from '../encoding/foreign-file.ts';
import { mailTextOf } from '../encoding/mail-text.ts';
import { Transcoder } from '../encoding/transcode.ts';
import { unconvertedUnit } from '../header/unit-words.ts';
import { IssueLog } from '../issues/issue-log.ts';
import { LongTable } from '../layout/long-table.ts';
import { planTable } from '../layout/plan-table.ts';
import type { PlanHints } from '../layout/reshaping/reshaping.ts';
import { type ExportSource, ImportRefusal } from '../readings.ts';
import type { Dialect } from '../scan/row-span.ts';
import { CountedDays } from '../time/counted-days.ts';
import type { OrderVerdict } from '../time/date-order.ts';
import { TimeReader } from '../time/time-reader.ts';
import { zoneTransitions } from '../time/zone.ts';
import { CellReader } from '../values/cell-reader.ts';
import { ByteBuffer } from './byte-buffer.ts';
import type { FileContext, ReadOverrides } from './file-context.ts';
import { finishLong } from './finish-long.ts';
import { finishWide } from './finish-wide.ts';
import { joinParts, type NamedPart } from './join-parts.ts';
import { noTable } from './no-table.ts';
import { placedRows } from './sample-rows.ts';
import { settleCountedDays } from './settle-counted-days.ts';
import { settleDateOrder } from './settle-date-order.ts';
import { searchWindows, TableSequence } from './table-sequence.ts';

export interface FileReadings {
  readonly parts: readonly NamedPart[];
  readonly report: FileReport;
  /** True where every time stamp carried its own offset. */
  readonly allOffsets: boolean;
}

const sampleBytes = 262_144;
const longestLine = 67_108_864;

/** Reads one export. Throws ImportRefusal where it is no export or holds no reading. */
export async function readFile(
  source: ExportSource,
  timeZone: string,
  overrides: ReadOverrides,
  onBytes: (count: number) => void,
): Promise<FileReadings> {
  const first = await readOnce(source, timeZone, overrides, null, onBytes);
  if ('report' in first) return first;
  const second = await readOnce(source, timeZone, overrides, first, () => {});
  if ('report' in second) return second;
  throw new Error('A settled order of day and month does not change.');
}

/** One pass over the file; the order of day and month for another where this one went by a wrong order. */
async function readOnce(
  source: ExportSource,
  timeZone: string,
  overrides: ReadOverrides,
  settledOrder: OrderVerdict | null,
  onBytes: (count: number) => void,
): Promise<FileReadings | OrderVerdict> {
  const chunks = source.open()[Symbol.asyncIterator]();
  try {
    const { sample: received, ended } = await firstBytes(chunks, onBytes);
    if (isBlank(received))
      throw new ImportRefusal(
        'file-empty',
        `${source.name} is empty: it holds no readings. Export it again.`,
      );
    refuseForeignFile(source.name, received);
    const mail = mailTextOf(received, source.name);
    const sample = mail === null ? received : joined(mail.push(received), ended ? mail.end() : noBytes);
    const encoding =
      overrides.encoding === undefined ? detectEncoding(sample, ended) : stated(overrides.encoding);
    const isWide = /^utf-(?:16|32)/u.test(encoding.encoding);
    if (!isWide) refuseBinary(source.name, sample);
    const transcoder = new Transcoder(encoding.encoding);
    const buffer = new ByteBuffer();
    buffer.append(transcoder.push(sample.subarray(encoding.markLength)));
    if (ended) close(buffer, transcoder);
    const context = contextFor(source.name, buffer, overrides, settledOrder, timeZone, ended);
    reportEncoding(encoding, context.issues);
    if (mail !== null) context.issues.choose('text that came by mail', mail.chosen, mail.because, null);
    const sequence = new TableSequence(context, isWide || mail !== null ? null : source.size);
    context.time.onReorder = (from, to) => {
      for (const table of sequence.tables) table.reorderTimes(from, to);
    };
    drain(buffer, sequence, ended, source.name);
    if (!ended) {
      for (let next = await chunks.next(); !next.done; next = await chunks.next()) {
        onBytes(next.value.length);
        buffer.append(transcoder.push(mail === null ? next.value : mail.push(next.value)));
        drain(buffer, sequence, false, source.name);
      }
      if (mail !== null) buffer.append(transcoder.push(mail.end()));
      close(buffer, transcoder);
      drain(buffer, sequence, true, source.name);
    }
    if (transcoder.invisibleBytes > 0)
      context.issues.add('bytes-left-out', { count: transcoder.invisibleBytes });
    return finish(sequence, context, timeZone);
  } finally {
    await chunks.return?.();
  }
}

const noBytes = new Uint8Array(0);

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}

async function firstBytes(
  chunks: AsyncIterator<Uint8Array>,
  onBytes: (count: number) => void,
): Promise<{ sample: Uint8Array; ended: boolean }> {
  const parts: Uint8Array[] = [];
  let length = 0;
  let ended = false;
  while (length < sampleBytes) {
    const next = await chunks.next();
    if (next.done) {
      ended = true;
      break;
    }
    onBytes(next.value.length);
    parts.push(next.value.slice());
    length += next.value.length;
  }
  const sample = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    sample.set(part, at);
    at += part.length;
  }
  return { sample, ended };
}

function isBlank(sample: Uint8Array): boolean {
  return sample.every(
    (byte) => byte === 32 || (byte >= 9 && byte <= 13) || byte === 0xef || byte === 0xbb || byte === 0xbf,
  );
}

function stated(encoding: string): EncodingVerdict {
  try {
    new TextDecoder(encoding === 'ibm437' ? 'utf-8' : encoding);
  } catch {
    throw new ImportRefusal(
      'unknown-encoding',
      `The encoding “${encoding}” is not known. Give one such as utf-8 or windows-1252.`,
    );
  }
  return {
    encoding: encoding.toLowerCase(),
    markLength: 0,
    because: 'the option says so',
    sure: true,
    suggestion: null,
  };
}

function close(buffer: ByteBuffer, transcoder: Transcoder): void {
  buffer.append(transcoder.end());
  const last = buffer.length > 0 ? buffer.bytes[buffer.end - 1] : 10;
  if (last !== 10 && last !== 13) buffer.append(Uint8Array.of(10));
}

function drain(buffer: ByteBuffer, sequence: TableSequence, atEnd: boolean, name: string): void {
  const end = atEnd ? buffer.end : buffer.lastLineEnd();
  if (end > buffer.from) buffer.from = sequence.take(buffer.bytes, buffer.from, end, atEnd);
  if (buffer.length > longestLine) {
    throw new ImportRefusal(
      'line-too-long',
      `${name} line ${sequence.line}: a line of more than 64 MB cannot be part of an export. Check how the file was made.`,
    );
  }
}

function contextFor(
  name: string,
  buffer: ByteBuffer,
  overrides: ReadOverrides,
  settledOrder: OrderVerdict | null,
  timeZone: string,
  ended: boolean,
): FileContext {
  const issues = new IssueLog(name);
  const end = ended ? buffer.end : Math.max(buffer.lastLineEnd(), 0) || buffer.end;
  const bytes = buffer.bytes.subarray(buffer.from, end);
  const found = detectDialect(bytes, bytes.length);
  const delimiter = overrides.delimiter?.charCodeAt(0) ?? found.dialect.delimiter;
  const dialect: Dialect = { ...found.dialect, delimiter };
  const planHints: PlanHints = {
    fileName: name,
    titleAbove: '',
    dateOrder: overrides.dateOrder ?? settledOrder?.order ?? null,
    isAmerican: /^(?:America|US|Pacific\/Honolulu|Canada)/u.test(timeZone),
    year: overrides.year ?? null,
    cutAt: delimiter !== 44 || overrides.decimalComma === false ? null : overrides.decimalComma ? ',' : '.',
  };
  const decimal = detectDecimalMark(valueCells(bytes, dialect, planHints), delimiter);
  const mark = overrides.decimalComma === undefined ? decimal.mark : overrides.decimalComma ? ',' : '.';
  if (decimal.chosen || mark === ',') {
    const other = mark === ',' ? '--decimal-point' : '--decimal-comma';
    issues.choose(
      'decimal mark',
      mark === ',' ? 'comma' : 'point',
      overrides.decimalComma === undefined ? decimal.because : 'the option says so',
      other,
    );
  }
  if (delimiter !== 44) {
    issues.choose(
      'delimiter',
      delimiterNames[delimiter] ?? String.fromCharCode(delimiter),
      found.because,
      '--delimiter',
    );
  }
  const time = new TimeReader(overrides.dateOrder ?? settledOrder?.order ?? null);
  time.zoneIsAmerican = planHints.isAmerican;
  return {
    name,
    dialect,
    time,
    counted: new CountedDays(),
    cells: new CellReader(mark),
    planHints,
    issues,
    overrides,
    settledOrder,
    counts: { rows: 0, rowsRejected: 0, values: 0, valuesRejected: 0 },
  };
}

/** Cells of the sample's value columns. */
function* valueCells(bytes: Uint8Array, dialect: Dialect, hints: PlanHints): Iterable<string> {
  for (const limit of searchWindows.slice(0, 3)) {
    const rows = placedRows(bytes, 0, bytes.length, 1, dialect, true, limit);
    const planned = planTable(rows, hints);
    if (planned === null) continue;
    const { plan } = planned;
    for (const { cells } of planned.rows.slice(plan.firstDataRow)) {
      for (const { at } of plan.columns) if (cells[at] !== undefined) yield cells[at];
    }
    return;
  }
}

function reportEncoding(verdict: EncodingVerdict, issues: IssueLog): void {
  if (verdict.encoding === 'utf-8' && verdict.sure) return;
  const because =
    verdict.suggestion === null
      ? verdict.because
      : `${verdict.because}; its characters could also be ${verdict.suggestion}`;
  issues.choose('encoding', verdict.encoding, because, '--encoding');
}

function finish(
  sequence: TableSequence,
  context: FileContext,
  timeZone: string,
): FileReadings | OrderVerdict {
  const { name, issues, counts } = context;
  if (sequence.tables.length === 0) throw noTable(name, sequence.fruitless);
  const otherOrder = settleDateOrder(context, sequence.tables);
  if (otherOrder !== null) return otherOrder;
  settleCountedDays(context, sequence.tables);
  const parts = sequence.tables.flatMap((table) => {
    const { from, to } = table.timeSpan();
    const zone = zoneTransitions(timeZone, within(from), within(to));
    return table instanceof LongTable ? finishLong(table, zone, context) : finishWide(table, zone, context);
  });
  if (issues.ambiguousNumber !== null) {
    const mark = context.cells.decimalMark;
    issues.choose(
      `numbers such as ${issues.ambiguousNumber}`,
      mark === ',' ? 'decimal comma' : 'decimal point',
      'the other numbers of the file are written so',
      mark === ',' ? '--decimal-point' : '--decimal-comma',
    );
  }
  for (const { tally } of parts) {
    const unit = tally.unit === null ? unconvertedUnit(tally.name) : null;
    if (unit !== null) issues.add('unit-not-converted', { column: tally.name, example: unit });
  }
  if (context.time.sawInterval) {
    issues.choose('time of a row', 'the beginning of its interval', 'the stamps name two times', null);
  }
  const named = joinParts(parts, issues, counts);
  if (!named.some(({ values }) => values.some((value) => !Number.isNaN(value))))
    throw noReadings(name, context);
  return {
    parts: named,
    report: { name, ...counts, issues: issues.issues(), choices: issues.choices },
    allOffsets: sequence.tables.every(
      (table) =>
        table.plan.time.headerOffset !== null ||
        (table.offsets.toggles.length === 1 && table.offsets.toggles[0] === 0),
    ),
  };
}

/** Clock changes are asked for from 1970 to 2100; a logger that lost its clock may write any year. */
function within(wallMs: number): number {
  return Math.min(Math.max(wallMs, 0), Date.UTC(2100, 0, 1));
}

function noReadings(name: string, { counts, issues }: FileContext): ImportRefusal {
  const worst = issues
    .issues()
    .find((issue) => issue.code.startsWith('row-') || issue.code.startsWith('time-'));
  const why = worst === undefined ? 'Its columns hold no numbers and no states.' : worst.message;
  return new ImportRefusal('no-readings', `${name}: none of its ${counts.rows} rows gave a reading. ${why}`);
}
