import { existsSync } from 'node:fs';
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

/** The browser that an npm package carries, with the libraries it needs; for machines that have none. */
async function packagedChromium(): Promise<string> {
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs20.x';
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs20.x';
  const { default: packaged } = await import('@sparticuz/chromium');
  return packaged.executablePath();
}

/** `$CHROMIUM_PATH`, else Debian's, else the one from the npm registry. */
export async function chromiumPath(): Promise<string> {
  const told = process.env['CHROMIUM_PATH'];
  if (told) return told;
  if (existsSync('/usr/bin/chromium')) return '/usr/bin/chromium';
  return packagedChromium();
}

export async function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: await chromiumPath(), args: flags });
}
