import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { writeFileAtomically } from '../../src/store/atomic-write.ts';
import { defaultDataFolder } from '../../src/store/data-folder.ts';
import { ExportStore } from '../../src/store/export-store.ts';
import { readRecord, writeRecords } from '../../src/store/records-file.ts';
import { storageRefusalFrom } from '../../src/store/storage-refusal.ts';
import { readCircuitLog, storeLog } from '../../src/store/stored-log.ts';
import { analysedFixture } from '../support/fixture-site.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rimelog-store-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const entry = {
  format: 'rimelog-stored-export/1',
  received: '2026-10-01T08:00:00.000Z',
  state: 'waiting',
  attempts: 0,
  files: [],
  siteFile: null,
  problem: null,
  summary: null,
} as const;

describe('Writing', () => {
  test('a process killed at any moment leaves the old text or the new, never a torn one', async () => {
    const path = join(folder, 'state.json');
    const module = new URL('../../src/store/atomic-write.ts', import.meta.url).href;
    const script = `
      import { writeFileAtomically } from '${module}';
      for (let n = 0; ; n++) { await writeFileAtomically(process.argv[1], JSON.stringify({ n, text: 'x'.repeat(300000), end: n })); if (n === 0) console.log('first'); }`;
    for (let kill = 0; kill < 6; kill++) {
      const writer = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script, path]);
      await once(writer.stdout, 'data');
      await new Promise((resolve) => setTimeout(resolve, 7 * kill));
      writer.kill('SIGKILL');
      await once(writer, 'exit');
      const { n, end } = JSON.parse(await readFile(path, 'utf8')) as { n: number; end: number };
      expect(end).toBe(n);
    }
  }, 60_000);

  test('a failed write leaves the old text and no rest', async () => {
    await writeFile(join(folder, 'a'), 'old');
    await expect(writeFileAtomically(join(folder, 'nowhere', 'a'), 'new')).rejects.toThrow();
    await expect(writeFileAtomically(join(folder, 'a'), null as never)).rejects.toThrow();
    expect(await readdir(folder)).toEqual(['a']);
    expect(await readFile(join(folder, 'a'), 'utf8')).toBe('old');
  });

  test('a full or closed disk is told with a remedy and without a path', () => {
    for (const [system, code] of [
      ['ENOSPC', 'disk-full'],
      ['EROFS', 'not-writable'],
      ['EACCES', 'not-writable'],
    ] as const) {
      const refusal = storageRefusalFrom(
        Object.assign(new Error(`${system}: open '/secret/x'`), { code: system }),
      );
      expect(refusal).toMatchObject({ name: 'StorageRefusal', code });
      expect(String(refusal)).not.toContain('/secret');
    }
    const other = new Error('other');
    expect(storageRefusalFrom(other)).toBe(other);
  });
});

describe('The store of exports', () => {
  test('what was accepted is there after a restart, with its last state', async () => {
    const store = await ExportStore.open(folder);
    const { id } = await store.begin();
    await store.accept({ ...entry, id });
    await Promise.all(Array.from({ length: 20 }, (_, attempts) => store.update(id, { attempts })));
    store.close();
    const again = await ExportStore.open(folder);
    expect(again.get(id)).toEqual({ ...entry, id, attempts: 19 });
    again.close();
  });

  test('what was discarded, half received or removed is gone', async () => {
    const store = await ExportStore.open(folder);
    const kept = await store.begin();
    await store.accept({ ...entry, id: kept.id });
    const discarded = await store.begin();
    await store.discard(discarded.id);
    await store.begin();
    await store.remove(kept.id);
    expect(await store.update(kept.id, { attempts: 1 })).toBeNull();
    store.close();
    const again = await ExportStore.open(folder);
    expect(again.list()).toEqual([]);
    expect(await readdir(join(folder, 'incoming'))).toEqual([]);
    expect(await readdir(join(folder, 'exports'))).toEqual([]);
    again.close();
  });

  test('an entry that cannot be read is left alone and not listed', async () => {
    const store = await ExportStore.open(folder);
    const { id } = await store.begin();
    await store.accept({ ...entry, id });
    store.close();
    await writeFile(join(folder, 'exports', id, 'export.json'), '{"format":"rimelog-stored-export/9"}');
    const again = await ExportStore.open(folder);
    expect(again.list()).toEqual([]);
    expect(await readdir(join(folder, 'exports'))).toEqual([id]);
    again.close();
  });

  test('the lock of a server that died is taken over', async () => {
    (await ExportStore.open(folder)).close();
    const dead = spawn(process.execPath, ['-e', '']);
    await once(dead, 'exit');
    await writeFile(join(folder, 'server.lock'), String(dead.pid));
    (await ExportStore.open(folder)).close();
  });

  test('the data folder is the user’s own on every system, unless told', () => {
    expect(defaultDataFolder({}, 'linux', '/home/ann')).toBe(join('/home/ann', '.local', 'share', 'rimelog'));
    expect(defaultDataFolder({ XDG_DATA_HOME: '/data' }, 'linux', '/home/ann')).toBe(
      join('/data', 'rimelog'),
    );
    expect(defaultDataFolder({}, 'darwin', '/Users/ann')).toContain(join('Library', 'Application Support'));
    expect(defaultDataFolder({ LOCALAPPDATA: 'L' }, 'win32', 'C:')).toBe(join('L', 'rimelog'));
    expect(defaultDataFolder({ RIMELOG_DATA: '/told' }, 'linux', '/home/ann')).toBe('/told');
  });
});

describe('Records', () => {
  test('any range comes back in single precision, gaps included', async () => {
    const path = join(folder, 'records.f32');
    await writeRecords(path, [Float64Array.of(1, 2, Number.NaN, 4), Uint8Array.of(0, 1, 2, 3)]);
    expect(await readRecord(path, 4, 0, { from: 1, to: 4 })).toEqual(Float64Array.of(2, Number.NaN, 4));
    expect(await readRecord(path, 4, 1, { from: 0, to: 4 })).toEqual(Float64Array.of(0, 1, 2, 3));
    await expect(readRecord(path, 4, 2, { from: 0, to: 4 })).rejects.toThrow('ends before');
  });

  test('a circuit read from disk is the circuit of the log, hostile names included', async () => {
    const { log, signals } = analysedFixture({ hostile: true });
    const stored = JSON.parse(JSON.stringify(await storeLog(folder, log, signals)));
    const [circuit] = log.circuits;
    const read = (await readCircuitLog(folder, stored, circuit!.id))!;
    expect(read.circuit.name).toBe(circuit!.name);
    expect(read.circuit.limits).toEqual(circuit!.limits);
    expect(read.circuit.probes.map(({ point }) => point)).toEqual(circuit!.probes.map(({ point }) => point));
    const { values } = circuit!.probes[1]!.record;
    expect(read.circuit.probes[1]!.record.values).toEqual(new Float64Array(new Float32Array(values)));
    expect(read.signals.phase).toEqual(signals.circuits[0]!.phase);
    expect(read.log.suctionGroups[0]!.pressure!.point).toBe(log.suctionGroups[0]!.pressure!.point);
    expect(await readCircuitLog(folder, stored, '__proto__')).toBeNull();
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
  });
});
