import type { Record } from '../model/record.ts';

/** A record of the log without its values, which lie in `records.f32` at its position in the list. */
export type StoredRecord = Omit<Record, 'values' | 'changes'>;

/** A model value of which every `Record` is replaced by `{ record: position }`. */
export type Packed<T> = T extends Record
  ? { readonly record: number }
  : T extends readonly (infer Item)[]
    ? readonly Packed<Item>[]
    : T extends object
      ? { readonly [Key in keyof T]: Packed<T[Key]> }
      : T;

function isRecord(value: object): value is Record {
  return 'values' in value && value.values instanceof Float64Array && 'point' in value;
}

/** Collects the records it meets, each once, in the order of meeting. */
export class RecordTable {
  readonly #positions = new Map<Record, number>();

  get records(): readonly Record[] {
    return [...this.#positions.keys()];
  }

  positionOf(record: Record): number {
    const position = this.#positions.get(record) ?? this.#positions.size;
    this.#positions.set(record, position);
    return position;
  }

  pack<T>(value: T): Packed<T> {
    return this.#pack(value) as Packed<T>;
  }

  #pack(value: unknown): unknown {
    if (Array.isArray(value)) return value.map((item) => this.#pack(item));
    if (typeof value !== 'object' || value === null) return value;
    if (isRecord(value)) return { record: this.positionOf(value) };
    const packed = Object.entries(value).map(([key, item]) => [key, this.#pack(item)]);
    return Object.fromEntries(packed);
  }
}

/** The way back: `load` fetches the record at a position. */
export async function unpack<T>(packed: Packed<T>, load: (position: number) => Promise<Record>): Promise<T> {
  return (await unpackAny(packed, load)) as T;
}

async function unpackAny(packed: unknown, load: (position: number) => Promise<Record>): Promise<unknown> {
  if (Array.isArray(packed)) return Promise.all(packed.map((item) => unpackAny(item, load)));
  if (typeof packed !== 'object' || packed === null) return packed;
  const keys = Object.keys(packed);
  if (keys.length === 1 && 'record' in packed && typeof packed.record === 'number')
    return load(packed.record);
  const entries = Object.entries(packed).map(
    async ([key, item]) => [key, await unpackAny(item, load)] as const,
  );
  return Object.fromEntries(await Promise.all(entries));
}
