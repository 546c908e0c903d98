// Opens a written page in headless Chromium, offline, and looks for what a person looks for; then
// lets npm `axe-core` judge it in light and in dark.
// Usage, from a folder with puppeteer-core and axe-core in node_modules:
//   node page_browser.mjs PAGE.html PLAN.json [PAGE.html PLAN.json ...]
// Prints one line for each check; exit 1 when one fails, 2 when it cannot run. How the page is laid
// out is the matter of page_layout.mjs.
import { readFileSync, statSync } from 'node:fs';
import { browser, check, exitCode, installed, opened, squeezed, stop, unfold } from './headless.mjs';

const files = process.argv.slice(2);
if (files.length === 0 || files.length % 2 === 1)
  stop('usage: node page_browser.mjs PAGE.html PLAN.json [PAGE.html PLAN.json ...]');
const axeSource = readFileSync(installed('axe-core'), 'utf8');

async function look(file, plan) {
  const { page, requests } = await opened(file, { width: 360, height: 640 });
  check('nothing but the file itself is asked for', requests.slice(1));
  check('there is no script', await page.$$eval('script', (all) => all.map((e) => e.outerHTML)));
  await unfold(page);

  const charts = await page.$$eval('svg[role=img]', (all) =>
    all.map((svg) => ({
      words: (svg.getAttribute('aria-labelledby') ?? '').split(' ').map((id) => document.getElementById(id)?.textContent ?? ''),
      wide: svg.getBoundingClientRect().width,
      shapes: svg.querySelectorAll('rect, line, path, polyline').length,
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
  const rows = (await page.$$eval('ol.work label', (all) => all.filter((one) => one.querySelector('input[type=checkbox]')).map((one) => one.textContent))).map(squeezed);
  const steps = plan.steps.filter((step) => step.pieces.length > 0 && !/^(sand|dust)/.test(step.kind));
  check('every step but sanding and dusting off, which are folded, has a box to tick',
    steps.filter((step) => !rows.some((row) => row.includes(squeezed(step.title)) && (plan.batches.length === 1 || row.includes(squeezed(step.batch))))).map((step) => step.key));
  const sanded = plan.steps.filter((step) => step.pieces.length > 0 && step.kind.startsWith('sand'));
  check('every sanding has a row that names its piece',
    sanded.filter((step) => !rows.some((row) => row.includes('sand') && (plan.batches.length === 1 || row.includes(squeezed(step.batch))))).map((step) => step.key));
  await page.close();
}

async function judge(file, scheme) {
  const { page } = await opened(file, { width: 1280, height: 900, scheme });
  await unfold(page);
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
process.exit(exitCode());
