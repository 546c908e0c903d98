// What the checks of a page share: a headless Chromium that is offline, and lines of what was found.
// The browser is /usr/bin/chromium, or what CHROMIUM names; puppeteer-core comes from the
// node_modules of the folder in which the check is run.
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const program = basename(process.argv[1], '.mjs');

export function stop(message) {
  console.error(`${program}: ${message}`);
  process.exit(2);
}

const require = createRequire(`${process.cwd()}/`);
export function installed(name) {
  try {
    return require.resolve(name);
  } catch {
    return stop(`npm package ${name} not found in ${process.cwd()}/node_modules`);
  }
}

let failed = false;
export function check(what, faults) {
  const first = faults.length > 0 ? ` (${faults.length}, first: ${faults[0]})` : '';
  console.log(`${faults.length === 0 ? 'ok' : 'FAILED'}: ${what}${first}`);
  failed ||= faults.length > 0;
}
export const exitCode = () => (failed ? 1 : 0);

const chromium = process.env.CHROMIUM ?? '/usr/bin/chromium';
if (!existsSync(chromium)) stop(`no browser at ${chromium}`);
const { default: puppeteer } = await import(pathToFileURL(installed('puppeteer-core')).href);
export const browser = await puppeteer.launch({
  executablePath: chromium,
  args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'],
});

/// The page of that file, and what it asked for.
export async function opened(file, { width, height, scheme = 'light', scale = 1 }) {
  const page = await browser.newPage();
  const requests = [];
  page.on('request', (request) => requests.push(request.url()));
  await page.setOfflineMode(true);
  await page.setViewport({ width, height, deviceScaleFactor: scale });
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
  await page.goto(pathToFileURL(resolve(file)).href, { waitUntil: 'load' });
  return { page, requests };
}

/// Everything that is folded, too.
export const unfold = (page) =>
  page.evaluate(() => document.querySelectorAll('details').forEach((one) => { one.open = true; }));

export const squeezed = (text) => text.replace(/\s+/g, ' ').trim();
