// Reads a written calendar back with npm `ical.js` and holds it against the JSON plan of the same
// run: one event for each session of work, at the plan's times, what cannot wait, what is ready, and
// their alarms.
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

// The work in stretches: a pause of more than an hour ends one. Set-up and clean-up belong to it.
const spans = plan.steps
  .filter((step) => !step.skipped)
  .flatMap((step) => step.pieces)
  .concat(plan.sessions.flatMap((session) => [session.set_up, session.clean_up]))
  .map((piece) => ({ begin: Date.parse(piece.begin_at), end: Date.parse(piece.end_at) }))
  .filter((piece) => piece.end > piece.begin)
  .sort((a, b) => a.begin - b.begin || a.end - b.end);
const stretches = [];
for (const span of spans) {
  const last = stretches.at(-1);
  if (last && span.begin <= last.end + 60 * minute) last.end = Math.max(last.end, span.end);
  else stretches.push({ ...span });
}
const toCome = stretches.filter((stretch) => stretch.end > now);
const category = (event) => event.getFirstPropertyValue('categories');
const title = (event) => event.getFirstPropertyValue('summary');
const cancelled = (event) => event.getFirstPropertyValue('status') === 'CANCELLED';
const free = (event) => event.getFirstPropertyValue('transp') === 'TRANSPARENT';
const shown = events.filter((e) => !cancelled(e)).sort((a, b) => time(a, 'dtstart') - time(b, 'dtstart'));
const sessions = shown.filter((e) => !free(e));
// Between two coats a tool may be cleaned, which the plan's JSON does not tell.
const ends = (event, stretch) => time(event, 'dtend') - stretch.end;
check(
  `there are ${toCome.length} sessions of work, at the plan's times, and they alone take up time`,
  toCome.length === sessions.length
    ? sessions.filter((e, i) => time(e, 'dtstart') !== toCome[i].begin || ends(e, toCome[i]) < 0 || ends(e, toCome[i]) > 30 * minute).map(uid)
    : [`${toCome.length} expected, ${sessions.length} found`],
);

// Ready and cured: told to the full hour of the local clock.
const minuteOfHour = (at) => Number(new Intl.DateTimeFormat('en', { timeZone: plan.job.zone, minute: 'numeric' }).format(at));
const hourOfDay = (at) => Number(new Intl.DateTimeFormat('en', { timeZone: plan.job.zone, hour: 'numeric', hourCycle: 'h23' }).format(at));
const fullHour = (at) => at + ((60 - minuteOfHour(at)) % 60) * minute;
const reached = plan.milestones
  .filter((m) => m.reached_at && (m.stage === 'light_use' || m.stage === 'full_cure'))
  .map((m) => fullHour(Date.parse(m.reached_at)))
  .filter((at) => at + 15 * minute > now)
  .sort((a, b) => a - b);
const milestones = shown.filter((e) => category(e) === 'milestone');
check(
  `there are ${reached.length} entries of what is ready and cured`,
  reached.length === milestones.length
    ? milestones.filter((e, i) => time(e, 'dtstart') !== reached[i]).map(uid)
    : [`${reached.length} expected, ${milestones.length} found`],
);

// What cannot wait: every wiping off; closing up by day; a pot, which only some plans have.
const exact = shown.filter((e) => free(e) && category(e) !== 'milestone');
const wiped = plan.steps
  .filter((step) => step.kind === 'wipe off' && !step.done)
  .map((step) => Date.parse(step.begin_at))
  .filter((at) => at > now);
check(
  `each of ${wiped.length} times to wipe off rings`,
  wiped.filter((at) => !exact.some((e) => time(e, 'dtstart') === at && title(e).includes('Wipe off'))),
);
const airings = (plan.fumes?.airings ?? []).flatMap((a) => a.airing);
const closeUps = exact.filter((e) => category(e) === 'airing');
check(
  'closing up is an entry by day, at or after the end of an airing, and never at night',
  closeUps.filter((e) => hourOfDay(time(e, 'dtstart')) >= 23 || hourOfDay(time(e, 'dtstart')) < 6).map(uid)
    .concat(closeUps.filter((e) => plan.fumes && !airings.some((one) => Date.parse(one.begin_at) < time(e, 'dtstart'))).map(uid)),
);

const alarms = (event) => event.getAllSubcomponents('valarm');
const lead = (event) => alarms(event)[0]?.getFirstProperty('trigger').getFirstValue().toSeconds();
const wants = (event) => category(event) !== 'milestone' && time(event, 'dtstart') > now;
check(
  'each session to come has one alarm 30 minutes before it',
  sessions.filter(wants).filter((e) => alarms(e).length !== 1 || lead(e) !== -1800).map(uid),
);
check(
  'what cannot wait has one alarm on its minute',
  exact.filter(wants).filter((e) => alarms(e).length !== 1 || lead(e) !== 0).map(uid),
);
check(
  'what is ready, cured, cancelled or under way has no alarm',
  events.filter((e) => cancelled(e) || !wants(e)).filter((e) => alarms(e).length > 0).map(uid),
);
// The first thing of a session can be done when it begins: whatever held it back is over.
const first = (event) => plan.steps.filter((step) => step.pieces.some((piece) => Date.parse(piece.begin_at) === time(event, 'dtstart')));
check(
  'no alarm rings earlier than its lead before the thing can be done',
  sessions.filter((e) => first(e).some((step) => step.held.some((held) => Date.parse(held.until_at) > time(e, 'dtstart') && step.begin_at === first(e)[0].begin_at))).map(uid),
);
const facts = shown.map((e) => `${time(e, 'dtstart')} ${title(e)}`);
check('no two entries say the same of the same minute', facts.filter((fact, i) => facts.indexOf(fact) !== i));
check('every title fits a phone', shown.filter((e) => [...title(e)].length > 80 || title(e).includes('\n')).map(title));
// A person reads all of it: the figures are those asked for.
const rings = events.flatMap(alarms).length;
if (plan.job.id === 'hall-bench')
  check(`the hall bench has under 25 entries (${shown.length}) and under 22 alarms (${rings})`,
    shown.length < 25 && rings < 22 ? [] : [`${shown.length} and ${rings}`]);
check('nothing is over by the plan\'s now', events.filter((e) => time(e, 'dtend') <= now).map(uid));
process.exit(failed ? 1 : 0);
