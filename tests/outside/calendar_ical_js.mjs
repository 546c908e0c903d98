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
const quarterFrom = (at) => span(at, new Date(Date.parse(at) + 15 * minute).toISOString());
const span = (from, to) => `${Date.parse(from)}/${Date.parse(to)}`;
const work = plan.steps.flatMap((step) => step.pieces.map((piece) => span(begins(step, piece), ends(step, piece))));
const milestones = plan.milestones
  .filter((m) => m.reached_at)
  .map((m) => quarterFrom(m.reached_at));
const airings = (plan.fumes?.airings ?? []).flatMap((a) => a.airing.map((one) => span(one.begin_at, one.end_at)));
const category = (event) => event.getFirstPropertyValue('categories');
const ofEvent = (e) => `${time(e, 'dtstart')}/${time(e, 'dtend')}`;
const expected = [...work, ...milestones, ...airings].sort();
const found = events.filter((e) => category(e) !== 'waiting').map(ofEvent).sort();
check(
  `there are ${work.length} pieces of work, ${milestones.length} milestones and ${airings.length} airings, at the plan's times`,
  expected.length === found.length
    ? expected.filter((s, i) => s !== found[i])
    : [`${expected.length} expected, ${found.length} found`],
);

// The end of a coat's wait is when it reaches the stage that the work after it waits for.
const reached = new Set(plan.steps.flatMap((step) =>
  Object.entries(step.reaches).filter(([key]) => key.endsWith('_at')).map(([, at]) => quarterFrom(at))));
const waits = events.filter((e) => category(e) === 'waiting');
check('the end of each wait is when a coat reaches a stage',
  waits.map(ofEvent).filter((one) => !reached.has(one)).concat(waits.length > 0 ? [] : ['there is none']));

const free = (event) => event.getFirstPropertyValue('transp') === 'TRANSPARENT';
check(
  'milestones, waits and airings take up no time and work does',
  events.filter(free).length === milestones.length + airings.length + waits.length ? [] : [`${events.filter(free).length} transparent`],
);
const alarms = (event) => event.getAllSubcomponents('valarm');
const trigger = (event) => alarms(event)[0]?.getFirstProperty('trigger');
const wants = (event) => !free(event) && time(event, 'dtstart') > now;
check(
  'work to come has one alarm 30 minutes before',
  events.filter(wants).filter((e) => alarms(e).length !== 1 || trigger(e).getFirstValue().toSeconds() !== -1800).map(uid),
);
check(
  'each airing has one alarm at its end',
  events.filter((e) => category(e) === 'airing')
    .filter((e) => alarms(e).length !== 1 || trigger(e).getParameter('related') !== 'END' || trigger(e).getFirstValue().toSeconds() !== 0)
    .map(uid),
);
check(
  'the alarm of a wait never rings before its end',
  waits.filter((e) => {
    const value = trigger(e)?.getFirstValue();
    if (!value) return false;
    return value.toSeconds ? value.toSeconds() !== 0 : value.toJSDate().getTime() < time(e, 'dtstart');
  }).map(uid),
);
check(
  'milestones and work under way have no alarm',
  events.filter((e) => !wants(e) && !['airing', 'waiting'].includes(category(e)) && alarms(e).length > 0).map(uid),
);
check('nothing is over by the plan\'s now', events.filter((e) => time(e, 'dtend') <= now).map(uid));
process.exit(failed ? 1 : 0);
