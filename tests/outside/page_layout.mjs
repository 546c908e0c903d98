// Measures a written page in headless Chromium as eyes, fingers and a printer meet it: what stands
// on a phone's first screen, what is too wide, too small to touch, or written over something else,
// and how many sheets it prints on.
// Usage, from a folder with puppeteer-core in node_modules, with poppler-utils installed:
//   node page_layout.mjs PAGE.html PLAN.json [PAGE.html PLAN.json ...]
// Prints one line for each check; exit 1 when one fails, 2 when it cannot run.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browser, check, exitCode, opened, squeezed, stop, unfold } from './headless.mjs';

const files = process.argv.slice(2);
if (files.length === 0 || files.length % 2 === 1)
  stop('usage: node page_layout.mjs PAGE.html PLAN.json [PAGE.html PLAN.json ...]');

/// What stands beside this term of the opening.
const beside = (page, word) =>
  page.evaluate((wanted) => {
    const term = [...document.querySelectorAll('header dt')].find((one) => one.textContent.trim() === wanted);
    const text = term?.nextElementSibling;
    return { text: text?.textContent ?? `no ${wanted}`, bottom: text?.getBoundingClientRect().bottom ?? 1e9 };
  }, word);

/// What a phone shows before anybody scrolls.
async function firstScreen(file, plan) {
  const height = 844;
  const { page } = await opened(file, { width: 390, height });
  const shown = { now: await beside(page, 'Now'), ready: await beside(page, 'Ready') };
  const texts = await page.$$eval('header dd, header p', (all) => all.map((one) => ({
    text: one.textContent, bottom: one.getBoundingClientRect().bottom })));
  const first = [squeezed(plan.steps[0].batch), plan.steps[0].title.split(' ').slice(0, 2).join(' ')];
  shown.next = texts.find((one) => first.every((words) => squeezed(one.text).toLowerCase().includes(words.toLowerCase())))
    ?? { text: `no ${first.join(', ')}`, bottom: 1e9 };
  const day = plan.ready_local ? String(Number(plan.ready_local.slice(8, 10))) : 'no date';
  check('the ready date is the plan’s', new RegExp(`\\b${day}\\b`).test(shown.ready.text) ? [] : [`${day}: ${shown.ready.text}`]);
  check(`now, the plan’s first step and the ready date end in the first ${height} pixels`,
    Object.values(shown).filter((one) => one.bottom > height).map((one) => `${one.text} ends at ${one.bottom}`));
  const dangers = await page.$$eval('header dt', (all) => all.filter((term) => term.textContent.trim() === 'DANGER')
    .map((term) => term.nextElementSibling.getBoundingClientRect().bottom));
  if (plan.cautions.some((caution) => caution.word === 'DANGER'))
    check(`what is dangerous ends in the first ${height} pixels`,
      dangers.length === 0 ? ['nothing says DANGER'] : dangers.filter((bottom) => bottom > height));
  await page.close();
}

/// Boxes that stick out of the box they are in, and texts wider than their box.
function tooWide() {
  const faults = [];
  for (const one of document.body.querySelectorAll('*')) {
    if (one.closest('svg') && one.tagName !== 'svg') continue;
    const own = one.getBoundingClientRect();
    if (own.width === 0 || own.height === 0) continue;
    const around = one.parentElement.getBoundingClientRect();
    const inline = getComputedStyle(one.parentElement).display === 'inline';
    if ((!inline && (own.right > around.right + 1 || own.left < around.left - 1)) || one.scrollWidth > Math.ceil(own.width) + 1)
      faults.push(`${one.tagName}.${one.className?.baseVal ?? one.className} ${own.left.toFixed()} to ${own.right.toFixed()} in ${around.left.toFixed()} to ${around.right.toFixed()}: ${one.textContent.slice(0, 40)}`);
  }
  if (document.documentElement.scrollWidth > innerWidth) faults.push(`the page: ${document.documentElement.scrollWidth}`);
  return faults;
}

/// What is touched, less high than a finger; links inside sentences apart.
function tooLow() {
  const faults = [];
  for (const one of document.querySelectorAll('a, summary, label, button, input:not(label input)')) {
    if (one.tagName === 'A' && one.parentElement.matches('p, dd') && one.parentElement.textContent.trim() !== one.textContent.trim()) continue;
    const { width, height } = one.getBoundingClientRect();
    if (width > 0 && height < 43.9) faults.push(`${one.tagName} ${height.toFixed(1)}: ${one.textContent.slice(0, 40)}`);
  }
  return faults;
}

/// Labels of charts that are small, leave their chart, or stand on each other or on a line that means something.
function badLabels() {
  const faults = [];
  const clear = 0.8;  // of a unit: boxes of letters have some air
  const crosses = (box, [ax, ay], [bx, by]) => {
    for (let i = 0; i <= 40; ++i) {
      const [x, y] = [ax + ((bx - ax) * i) / 40, ay + ((by - ay) * i) / 40];
      if (x > box.x + clear && x < box.x + box.width - clear && y > box.y + clear && y < box.y + box.height - clear) return true;
    }
    return false;
  };
  for (const svg of document.querySelectorAll('svg[role=img]')) {
    const name = svg.querySelector('title').textContent;
    const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    const labels = [...svg.querySelectorAll('text')].map((text) => ({ text, box: text.getBBox() }));
    const curves = [...svg.querySelectorAll('polyline, polygon')].map((curve) => [...curve.points].map((p) => [p.x, p.y]));
    for (const line of svg.querySelectorAll('line:not(.lane)'))
      curves.push([[line.x1.baseVal.value, line.y1.baseVal.value], [line.x2.baseVal.value, line.y2.baseVal.value]]);
    const bars = [...svg.querySelectorAll('rect')].map((bar) => bar.getBBox());
    for (const { text, box } of labels) {
      const say = (what) => faults.push(`${name}, "${text.textContent}": ${what}`);
      const size = parseFloat(getComputedStyle(text).fontSize) * scale;
      if (size < 12.95) say(`${size.toFixed(1)} px high`);
      if (box.x < -0.1 || box.x + box.width > svg.viewBox.baseVal.width + 0.1 || box.y + box.height > svg.viewBox.baseVal.height + 1) say('leaves the chart');
      for (const curve of curves)
        if (curve.some((point, i) => i > 0 && crosses(box, curve[i - 1], point))) say('on a curve');
      for (const other of [...bars, ...labels.filter((each) => each.text !== text).map((each) => each.box)])
        if (Math.min(box.x + box.width, other.x + other.width) - Math.max(box.x, other.x) > clear &&
            Math.min(box.y + box.height, other.y + other.height) - Math.max(box.y, other.y) > clear * 3)
          say('on a bar or another label');
    }
  }
  return faults;
}

/// How far the fill of the nights differs from the page behind them: 1 is not at all.
function nightContrast() {
  const night = document.querySelector('svg[role=img] .night');
  if (!night) return 99;
  const light = (colour) => {
    const [r, g, b] = colour.match(/[\d.]+/g).map((part) => (part / 255) ** 2.2);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05;
  };
  const [a, b] = [light(getComputedStyle(night).fill), light(getComputedStyle(document.body).backgroundColor)];
  return Math.max(a, b) / Math.min(a, b);
}

async function screens(file) {
  for (const width of [360, 390, 768, 1280]) {
    const { page } = await opened(file, { width, height: 844, scheme: width === 390 ? 'dark' : 'light' });
    check(`at ${width} pixels nothing folded is wider than what it stands in`, await page.evaluate(tooWide));
    await unfold(page);
    check(`at ${width} pixels nothing is wider than what it stands in`, await page.evaluate(tooWide));
    check(`at ${width} pixels everything to touch is 44 pixels high`, await page.evaluate(tooLow));
    check(`at ${width} pixels labels of charts are 13 pixels high and stand free`, await page.evaluate(badLabels));
    const contrast = await page.evaluate(nightContrast);
    check(`at ${width} pixels night is seen`, contrast > 1.15 ? [] : [contrast]);
    await page.close();
  }
}

/// The words of each sheet with the place where they end, as a share of the sheet's height.
function sheets(pdf) {
  const folder = mkdtempSync(join(tmpdir(), 'sheets-'));
  const out = join(folder, 'words.html');
  execFileSync('pdftotext', ['-bbox', pdf, out]);
  const pages = readFileSync(out, 'utf8').split('<page ').slice(1).map((text) => ({
    height: Number(text.match(/height="([\d.]+)"/)[1]),
    words: [...text.matchAll(/yMax="([\d.]+)">(.*?)<\/word>/g)].map((found) => ({ ends: Number(found[1]), word: found[2] })),
  }));
  rmSync(folder, { recursive: true });
  return pages.map(({ height, words }) => ({
    words: words.length,
    text: words.map((one) => one.word).join(' '),
    filled: Math.max(0, ...words.map((one) => one.ends)) / height,
  }));
}

async function paper(file, plan) {
  const { page } = await opened(file, { width: 800, height: 900 });
  const folder = mkdtempSync(join(tmpdir(), 'paper-'));
  for (const format of ['A4', 'Letter']) {
    const pdf = join(folder, `${format}.pdf`);
    await page.pdf({ path: pdf, format });
    const all = sheets(pdf);
    check(`${format}: it prints on three sheets at the most`, all.length <= 3 ? [] : [`${all.length} sheets`]);
    check(`${format}: the last sheet is a third full`, all.at(-1).filled > 1 / 3 ? [] : [all.at(-1).filled]);
    check(`${format}: no sheet has just a sentence`, all.filter((sheet) => sheet.words < 60).map((sheet) => sheet.text));
    const [name, year] = [squeezed(plan.job.name).replaceAll('&', '&amp;'), plan.now_local.slice(0, 4)];
    check(`${format}: each sheet has the job's name and the plan's date`,
      all.filter((sheet) => !sheet.text.includes(name) || !sheet.text.includes(year)).map((sheet) => sheet.text.slice(0, 60)));
  }
  rmSync(folder, { recursive: true });
  await page.close();
}

for (let i = 0; i < files.length; i += 2) {
  const [file, plan] = [files[i], JSON.parse(readFileSync(files[i + 1], 'utf8'))];
  console.log(file);
  await firstScreen(file, plan);
  await screens(file);
  await paper(file, plan);
}
await browser.close();
process.exit(exitCode());
