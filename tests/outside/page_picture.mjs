// Draws the picture of the page that README.md shows: the first screen of a phone and, beside it,
// the charts as a wide screen has them. Kept small: few colours.
// Usage, from a folder with puppeteer-core in node_modules, with ImageMagick installed:
//   node page_picture.mjs PAGE.html OUT.png
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browser, opened, stop } from './headless.mjs';

const [file, out] = process.argv.slice(2);
if (!out) stop('usage: node page_picture.mjs PAGE.html OUT.png');
const [phone, wide, height, border] = [390, 1060, 844, 12];

async function shot(width, from) {
  const { page } = await opened(file, { width, height });
  const y = await page.evaluate((id) => (id ? document.getElementById(id).getBoundingClientRect().top - 8 : 0), from);
  const png = await page.screenshot({ clip: { x: 0, y, width, height }, encoding: 'base64', captureBeyondViewport: true });
  await page.close();
  return `data:image/png;base64,${png}`;
}

const shots = [await shot(phone, null), await shot(wide, 'work-and-waits')];
const page = await browser.newPage();
const width = phone + wide + 3 * border;
await page.setViewport({ width, height: height + 2 * border });
await page.setContent(`<body style="margin:0;display:flex;gap:${border}px;padding:${border}px;background:#8d8173">
${shots.map((each) => `<img src="${each}">`).join('')}</body>`);
const folder = mkdtempSync(join(tmpdir(), 'picture-'));
const large = join(folder, 'large.png');
await page.screenshot({ path: large });
await browser.close();
execFileSync('convert', [large, '-resize', '70%', '+dither', '-colors', '32', '-strip', '-define', 'png:compression-level=9', out]);
rmSync(folder, { recursive: true });
console.log(`${out}: ${statSync(out).size} bytes`);
