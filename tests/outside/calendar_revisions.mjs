// Imports a plan's calendar and then that of a later plan into one store with npm `ical.js`, each
// twice, as a family calendar would: an event replaces the one of the same UID when its SEQUENCE is
// not lower (RFC 5545, 3.8.4.7 and 3.8.7.4), and goes when it is cancelled (3.8.1.11).
// Usage, from a folder with ical.js in node_modules:
//   node calendar_revisions.mjs FIRST.ics LATER.ics LATER_PLAN.json
// Prints one line for each check; exit 1 when one fails, 2 when it cannot run.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const [first, later, planFile] = process.argv.slice(2);
if (!planFile) {
  console.error('usage: node calendar_revisions.mjs FIRST.ics LATER.ics LATER_PLAN.json');
  process.exit(2);
}
const path = createRequire(`${process.cwd()}/`).resolve('ical.js');
const ICAL = (await import(pathToFileURL(path).href)).default;
const plan = JSON.parse(readFileSync(planFile, 'utf8'));

let failed = false;
function check(what, faults) {
  const told = faults.length > 0 ? ` (${faults.length}, first: ${faults[0]})` : '';
  console.log(`${faults.length === 0 ? 'ok' : 'FAILED'}: ${what}${told}`);
  failed ||= faults.length > 0;
}

const store = new Map();
const value = (event, name) => event.getFirstPropertyValue(name);
function importFile(file) {
  const events = new ICAL.Component(ICAL.parse(readFileSync(file, 'utf8'))).getAllSubcomponents('vevent');
  const uids = events.map((event) => value(event, 'uid'));
  check(`${file} has each UID once`, uids.filter((uid, i) => uids.indexOf(uid) !== i));
  for (const event of events) {
    const old = store.get(value(event, 'uid'));
    if (!old || value(event, 'sequence') >= value(old, 'sequence')) store.set(value(event, 'uid'), event);
  }
}
const snapshot = () => [...store].map(([uid, event]) => `${uid} ${event.toString()}`).sort();

importFile(first);
const before = new Map(store);
importFile(first);
importFile(later);
const once = snapshot();
importFile(later);
check('importing twice changes nothing', snapshot().filter((line, i) => line !== once[i]));

const cancelled = (event) => value(event, 'status') === 'CANCELLED';
const shown = [...store.values()].filter((event) => !cancelled(event));
const now = Date.parse(plan.now_at);
const to_come = shown.filter((event) => value(event, 'dtend').toJSDate().getTime() > now);
const planned = new Map(plan.calendar.map((event) => [event.uid, event]));
check(
  'no event to come is an orphan of the first plan',
  to_come.map((event) => value(event, 'uid')).filter((uid) => !planned.has(uid) || planned.get(uid).cancelled),
);
check(
  'every event to come of the later plan is shown, at its time',
  plan.calendar
    .filter((event) => !event.cancelled && Date.parse(event.end_at) > now)
    .filter((event) => {
      const own = store.get(event.uid);
      return !own || cancelled(own) || value(own, 'dtstart').toJSDate().getTime() !== Date.parse(event.begin_at);
    })
    .map((event) => event.uid),
);
const bare = (event) => event.toString().replace(/^(DTSTAMP|SEQUENCE):.*\r?\n/gm, '');
check(
  'what says something else has a higher SEQUENCE',
  [...before].filter(([uid, old]) => {
    const own = store.get(uid);
    return own !== old && bare(own) !== bare(old) && value(own, 'sequence') <= value(old, 'sequence');
  }).map(([uid]) => uid),
);
const moved = [...before].filter(([uid, old]) => value(store.get(uid), 'sequence') > value(old, 'sequence'));
check('something moved or was cancelled, or this check says nothing', moved.length > 0 ? [] : ['nothing']);
const gone = [...store.values()].filter(cancelled).length;
console.log(`${before.size} events, then ${shown.length} shown, ${moved.length} revised, ${gone} cancelled`);
process.exit(failed ? 1 : 0);
