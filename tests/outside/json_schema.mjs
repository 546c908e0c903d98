// Validates JSON documents against JSON Schemas of draft 2020-12 with npm `ajv` and `ajv-formats`.
// Usage, from a folder with both in node_modules, or with NODE_PATH set:
//   node json_schema.mjs SCHEMA DOCUMENT [SCHEMA DOCUMENT ...]
// Prints one line for each document; exit 1 when one does not fit, 2 when it cannot run.
import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';

const mostErrors = 5;

function stop(message) {
  console.error(`json_schema: ${message}`);
  process.exit(2);
}

function load() {
  try {
    const require = createRequire(`${process.cwd()}/`);
    return [require('ajv/dist/2020').default, require('ajv-formats').default];
  } catch (error) {
    return stop(`npm packages ajv and ajv-formats not found here or in NODE_PATH (${error.code})`);
  }
}

function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch (error) {
    return stop(`${path}: ${error.message}`);
  }
}

const paths = process.argv.slice(2);
if (paths.length === 0 || paths.length % 2 !== 0)
  stop('usage: node json_schema.mjs SCHEMA DOCUMENT [SCHEMA DOCUMENT ...]');
const [Ajv, addFormats] = load();

let failed = false;
for (let i = 0; i < paths.length; i += 2) {
  const ajv = new Ajv({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true });
  addFormats(ajv);
  // A schema may refer to the others of its folder by their $id.
  for (const name of readdirSync(dirname(paths[i])).sort()) {
    const other = join(dirname(paths[i]), name);
    if (name.endsWith('.schema.json') && name !== basename(paths[i])) ajv.addSchema(readJson(other));
  }
  const validate = ajv.compile(readJson(paths[i]));
  const fits = validate(readJson(paths[i + 1]));
  const names = `${basename(paths[i + 1])} against ${basename(paths[i])}`;
  console.log(fits ? `ok: ${names}` : `FAILED: ${names}: ${validate.errors.length} errors`);
  if (fits) continue;
  failed = true;
  for (const error of validate.errors.slice(0, mostErrors))
    console.log(`  ${error.instancePath || '/'} ${error.message} ${JSON.stringify(error.params)}`);
}
process.exit(failed ? 1 : 0);
