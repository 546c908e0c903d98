// Reads a written calendar back with npm `ical.js` and holds it against the JSON plan of the same
// run: one event for each piece of work, milestone and airing, at the plan's times, with alarms.
// Usage, from a folder with ical.js in node_modules:
//   node calendar_ical_js.mjs CALENDAR.ics PLAN.json
// Prints one line for each check; exit 1 when one fails, 2 when it cannot run.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

function stop(message) {
  console.error(`calendar_ical_js: ${message}`);
  process.exit(2);
}

async function loadParser() {
  try {
    const path = createRequire(`${process.cwd()}/`).resolve('ical.js');
    return (await import(pathToFileURL(path).href)).default;
  } catch (error) {
    return stop(`npm package ical.js not found in ${join(process.cwd(), 'node_modules')} (${error.code})`);
  }
}

function readText(path) {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    return stop(error.message);
  }
}

let failed = false;
function check(what, faults) {
  const first = faults.length > 0 ? ` (${faults.length}, first: ${faults[0]})` : '';
  console.log(`${faults.length === 0 ? 'ok' : 'FAILED'}: ${what}${first}`);
  failed ||= faults.length > 0;
}

if (process.argv.length !== 4) stop('usage: node calendar_ical_js.mjs CALENDAR.ics PLAN.json');
const ICAL = await loadParser();
const plan = JSON.parse(readText(process.argv[3]));
let events = [];
try {
  const calendar = new ICAL.Component(ICAL.parse(readText(process.argv[2])));
  events = calendar.getAllSubcomponents('vevent');
  check('the calendar parses', []);
} catch (error) {
  check('the calendar parses', [error.message]);
  process.exit(1);
}

const uid = (event) => event.getFirstPropertyValue('uid');
const time = (event, name) => event.getFirstPropertyValue(name)?.toJSDate().getTime();
const minute = 60_000;
const now = Date.parse(plan.now_at);

check(
  'every event has UID, DTSTAMP, DTSTART, DTEND and SUMMARY',
  events.filter((e) => ['uid', 'dtstamp', 'dtstart', 'dtend', 'summary'].some((n) => !e.getFirstPropertyValue(n))).map(uid),
);
check('every event ends after it starts', events.filter((e) => !(time(e, 'dtend') > time(e, 'dtstart'))).map(uid));
check('every stamp is the plan\'s now', events.filter((e) => time(e, 'dtstamp') !== now).map(uid));
check('no UID comes twice', events.map(uid).filter((id, i, all) => all.indexOf(id) !== i));

// Set-up belongs to the first coat of a session and clean-up to the last.
const begins = (step, piece) => {
  const session = plan.sessions[step.session];
  return session?.steps[0] === step.key ? session.set_up.begin_at : piece.begin_at;
};
const ends = (step, piece) => {
  const session = plan.sessions[step.session];
  return session?.steps.at(-1) === step.key ? session.clean_up.end_at : piece.end_at;
};
const span = (from, to) => `${Date.parse(from)}/${Date.parse(to)}`;
const work = plan.steps.flatMap((step) => step.pieces.map((piece) => span(begins(step, piece), ends(step, piece))));
const milestones = plan.milestones
  .filter((m) => m.reached_at)
  .map((m) => span(m.reached_at, new Date(Date.parse(m.reached_at) + 15 * minute).toISOString()));
const airings = (plan.fumes?.airings ?? []).flatMap((a) => a.airing.map((one) => span(one.begin_at, one.end_at)));
const expected = [...work, ...milestones, ...airings].sort();
const found = events.map((e) => `${time(e, 'dtstart')}/${time(e, 'dtend')}`).sort();
check(
  `there are ${work.length} pieces of work, ${milestones.length} milestones and ${airings.length} airings, at the plan's times`,
  expected.length === found.length
    ? expected.filter((s, i) => s !== found[i])
    : [`${expected.length} expected, ${found.length} found`],
);

const free = (event) => event.getFirstPropertyValue('transp') === 'TRANSPARENT';
check(
  'milestones and airings take up no time and work does',
  events.filter(free).length === milestones.length + airings.length ? [] : [`${events.filter(free).length} transparent`],
);
const alarms = (event) => event.getAllSubcomponents('valarm');
const wants = (event) => !free(event) && time(event, 'dtstart') > now;
check(
  'work to come has one alarm 30 minutes before, nothing else has any',
  events
    .filter((e) => {
      const found = alarms(e);
      if (!wants(e)) return found.length > 0;
      return found.length !== 1 || found[0].getFirstPropertyValue('trigger')?.toSeconds() !== -1800;
    })
    .map(uid),
);
process.exit(failed ? 1 : 0);
