// Compares the program's saturation pressures and dew points with PsychroLib (npm `psychrolib`),
// state by state. Usage, from a folder with psychrolib in node_modules, or with NODE_PATH set:
//   psychrometrics_grid > grid.csv && node psychrometrics.mjs grid.csv
// Prints one line; exit 1 beyond tolerance, 2 when it cannot run.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

// Both sides evaluate the same formula in doubles; 1e-9 leaves room for the 12 printed digits.
const pressureTolerance = 1e-9;
// PsychroLib stops its iteration when a step is under 0.001 K.
const dewTolerance = 0.001;
// At and under the triple point PsychroLib gives the frost point, over ice, where the program goes
// on over liquid water: there the two must differ, so those dew points are counted but not compared.
const triplePoint = 0.01;
const fewestStates = 2000;

function fail(code, message) {
  console.error(`psychrometrics: ${message}`);
  process.exit(code);
}

function loadPsychrolib() {
  try {
    return createRequire(`${process.cwd()}/`)('psychrolib');
  } catch (error) {
    return fail(2, `npm package psychrolib not found here or in NODE_PATH (${error.code})`);
  }
}

function readText(path) {
  if (!path) return fail(2, 'usage: node psychrometrics.mjs GRID.csv');
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    return fail(2, error.message);
  }
}

function readStates(path) {
  const [head, ...lines] = readText(path).trim().split('\n');
  if (head !== 't,rh,pws,dew') fail(2, `${path}: head is "${head}", wanted "t,rh,pws,dew"`);
  return lines.map((line) => {
    const [t, rh, pws, dew] = line.split(',').map(Number);
    return { t, rh, pws, dew };
  });
}

const psychrolib = loadPsychrolib();
const states = readStates(process.argv[2]);
psychrolib.SetUnitSystem(psychrolib.SI);

let worstPressure = 0;
let worstDew = 0;
let dewPoints = 0;
for (const { t, rh, pws, dew } of states) {
  const pressure = Math.abs(pws / psychrolib.GetSatVapPres(t) - 1);
  // Math.max keeps NaN, from a field that is not a number, as the worst.
  worstPressure = Math.max(worstPressure, pressure);
  if (dew <= triplePoint) continue;
  dewPoints += 1;
  const difference = Math.abs(dew - psychrolib.GetTDewPointFromRelHum(t, rh / 100));
  worstDew = Math.max(worstDew, difference);
}

console.log(
  `psychrometrics: ${states.length} states, worst relative difference ${worstPressure.toExponential(1)}, ` +
    `worst dew point difference ${worstDew.toExponential(1)} K (${dewPoints} above freezing)`,
);
if (dewPoints < fewestStates) fail(1, `wanted at least ${fewestStates} states above freezing`);
if (!(worstPressure <= pressureTolerance)) fail(1, `saturation pressure beyond ${pressureTolerance}`);
if (!(worstDew <= dewTolerance)) fail(1, `dew point beyond ${dewTolerance} K`);
