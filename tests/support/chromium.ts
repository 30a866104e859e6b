import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/** Nothing that a test page does not need, and no talk of the browser's own. */
const quietArguments = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const installed = [process.env['CHROMIUM_PATH'], '/usr/bin/chromium', '/usr/bin/chromium-browser'];

/** The browser of the machine, else the one that a package of the npm registry brings along. */
async function executable(): Promise<{ path: string; args: readonly string[] }> {
  const path = installed.find((each) => each !== undefined && existsSync(each));
  if (path !== undefined) return { path, args: quietArguments };
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs20.x';
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs20.x';
  const { default: packaged } = await import('@sparticuz/chromium');
  return { path: await packaged.executablePath(), args: [...packaged.args, ...quietArguments] };
}

/** A headless browser for tests. */
export async function launchChromium(): Promise<Browser> {
  const { path, args } = await executable();
  return chromium.launch({ executablePath: path, args: [...args], headless: true });
}
