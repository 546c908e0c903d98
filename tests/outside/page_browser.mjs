// Opens a written page in headless Chromium, offline and on a narrow screen, and looks for what a
// person looks for; then lets npm `axe-core` judge it in light and in dark.
// Usage, from a folder with puppeteer-core and axe-core in node_modules:
//   node page_browser.mjs PAGE.html PLAN.json [PAGE.html PLAN.json ...]
// The browser is /usr/bin/chromium, or what CHROMIUM names. Prints one line for each check; exit 1
// when one fails, 2 when it cannot run.
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

function stop(message) {
  console.error(`page_browser: ${message}`);
  process.exit(2);
}

const require = createRequire(`${process.cwd()}/`);
function path(name) {
  try {
    return require.resolve(name);
  } catch {
    return stop(`npm package ${name} not found in ${process.cwd()}/node_modules`);
  }
}

let failed = false;
function check(what, faults) {
  const first = faults.length > 0 ? ` (${faults.length}, first: ${faults[0]})` : '';
  console.log(`${faults.length === 0 ? 'ok' : 'FAILED'}: ${what}${first}`);
  failed ||= faults.length > 0;
}

const files = process.argv.slice(2);
if (files.length === 0 || files.length % 2 === 1)
  stop('usage: node page_browser.mjs PAGE.html PLAN.json [PAGE.html PLAN.json ...]');
const chromium = process.env.CHROMIUM ?? '/usr/bin/chromium';
if (!existsSync(chromium)) stop(`no browser at ${chromium}`);
const { default: puppeteer } = await import(pathToFileURL(path('puppeteer-core')).href);
const axeSource = readFileSync(path('axe-core'), 'utf8');
const browser = await puppeteer.launch({
  executablePath: chromium,
  args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'],
});

async function opened(file, { width, height, scheme = 'light' }) {
  const page = await browser.newPage();
  const requests = [];
  page.on('request', (request) => requests.push(request.url()));
  await page.setOfflineMode(true);
  await page.setViewport({ width, height });
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
  await page.goto(pathToFileURL(resolve(file)).href, { waitUntil: 'load' });
  return { page, requests };
}

const squeezed = (text) => text.replace(/\s+/g, ' ').trim();

/// What stands beside the term `word` of the opening.
async function beside(page, word) {
  return page.evaluate((wanted) => {
    for (const term of document.querySelectorAll('header dt')) {
      if (term.textContent.trim() !== wanted) continue;
      const text = term.nextElementSibling;
      return { text: text.textContent, bottom: text.getBoundingClientRect().bottom };
    }
    return { text: `no ${wanted}`, bottom: 1e9 };
  }, word);
}

async function look(file, plan) {
  const height = 640;
  const { page, requests } = await opened(file, { width: 360, height });
  check('nothing but the file itself is asked for', requests.slice(1));
  check('there is no script', await page.$$eval('script', (all) => all.map((e) => e.outerHTML)));

  const next = await beside(page, 'Next');
  const ready = await beside(page, 'Ready');
  const first = plan.steps[0];
  check('the next step is the first of the plan', squeezed(next.text).includes(squeezed(first.title).slice(0, 30)) ? [] : [next.text]);
  check(`next step and ready date stand in the first ${height} pixels`,
    [next, ready].filter((one) => one.bottom > height).map((one) => `${one.text} ends at ${one.bottom}`));
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  check('the page is no wider than the screen', wide <= 360 ? [] : [`${wide} pixels`]);

  const charts = await page.$$eval('svg[role=img]', (all) =>
    all.map((svg) => ({
      words: (svg.getAttribute('aria-labelledby') ?? '').split(' ').map((id) => document.getElementById(id)?.textContent ?? ''),
      wide: svg.getBoundingClientRect().width,
      shapes: svg.querySelectorAll('rect, line, polyline').length,
    })));
  check('there are charts of the days and of the air',
    ['Work and waits', 'Air and drying'].filter((name) => !charts.some((chart) => chart.words[0].startsWith(name))));
  check(`each of ${charts.length} charts has a title, a description, a size and shapes`,
    charts.filter((chart) => chart.words.length !== 2 || chart.words.some((text) => text === '') || chart.wide < 200 || chart.shapes < 3).map((chart) => JSON.stringify(chart)));
  if (plan.fumes)
    check('vapour is shown against its limits',
      charts.some((chart) => chart.words[0].startsWith('Vapour of the room')) ? [] : ['no such chart']);

  const bodyText = squeezed(await page.evaluate(() => document.body.textContent));
  const shopping = [
    ...plan.shopping.coatings.map((one) => one.coating),
    ...plan.shopping.sundries.map((one) => one.what),
  ];
  check('everything to buy is named', shopping.filter((name) => !bodyText.includes(squeezed(name))));
  const parts = plan.parts.map((part) => part.name);
  check('every part is named', parts.filter((name) => !bodyText.includes(squeezed(name))));
  const boxes = await page.$$eval('ol.work input[type=checkbox]', (all) => all.length);
  const pieces = plan.steps.flatMap((step) => step.pieces).length;
  check('every piece of work has a box to tick', boxes >= pieces ? [] : [`${boxes} boxes for ${pieces} pieces`]);
  await page.close();
}

async function judge(file, scheme) {
  const { page } = await opened(file, { width: 1280, height: 900, scheme });
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => { one.open = true; }));
  await page.evaluate(axeSource);
  const result = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
  check(`axe-core finds nothing in ${scheme}`,
    result.violations.map((one) => `${one.id}: ${one.help}: ${one.nodes[0].html.slice(0, 160)}`));
  await page.close();
}

for (let i = 0; i < files.length; i += 2) {
  const [file, plan] = [files[i], JSON.parse(readFileSync(files[i + 1], 'utf8'))];
  console.log(file);
  const size = statSync(file).size;
  check('the file is under 300 kB', size < 300_000 ? [] : [`${size} bytes`]);
  await look(file, plan);
  await judge(file, 'light');
  await judge(file, 'dark');
}
await browser.close();
process.exit(failed ? 1 : 0);
