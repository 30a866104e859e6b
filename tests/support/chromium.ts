import { existsSync } from 'node:fs';
import { mkdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/**
 * No sandbox: tests run as root in containers, and open only pages of our own. The others keep the browser from
 * looking for hosts of its maker.
 */
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const longestUnpackingMs = 120_000;

/** One test file at a time unpacks the browser; the others find it unpacked. */
async function alone<T>(work: () => Promise<T>): Promise<T> {
  const lock = join(tmpdir(), 'rimelog-chromium.lock');
  for (;;) {
    try {
      await mkdir(lock);
      break;
    } catch {
      const made = (await stat(lock).catch(() => null))?.mtimeMs ?? 0;
      if (Date.now() - made > longestUnpackingMs) await rm(lock, { recursive: true, force: true });
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
  try {
    return await work();
  } finally {
    await rm(lock, { recursive: true, force: true });
  }
}

/** The browser that an npm package carries, with the libraries it needs; for machines that have none. */
async function packagedChromium(): Promise<string> {
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs20.x';
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs20.x';
  const { default: packaged } = await import('@sparticuz/chromium');
  return alone(() => packaged.executablePath());
}

/** `$CHROMIUM_PATH` (`packaged` for the one from the npm registry), else Debian's, else the one from the registry. */
export async function chromiumPath(): Promise<string> {
  const told = process.env['CHROMIUM_PATH'];
  if (told === 'packaged') return packagedChromium();
  if (told) return told;
  return existsSync('/usr/bin/chromium') ? '/usr/bin/chromium' : packagedChromium();
}

export async function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: await chromiumPath(), args: flags });
}
