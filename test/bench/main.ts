import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { linesOf } from './figure.js';
import { makeGround } from './ground.js';
import { sizes } from './kitchen/kitchen.js';
import { parts } from './parts.js';

// npm run bench -- [PART …] [--json FILE]
const { values, positionals } = parseArgs({ allowPositionals: true, options: { json: { type: 'string' } } });
const unknown = positionals.find((name) => !Object.hasOwn(parts, name));
if (unknown !== undefined) {
  console.error(`There is no part "${unknown}": the parts are ${Object.keys(parts).join(', ')}.`);
  process.exit(1);
}

const machine = {
  node: process.version,
  processors: `${cpus().length} × ${cpus()[0]?.model.trim()}`,
  loadBefore: loadavg()[0]!,
};
console.log(`${sizes.recipes} recipes, ${sizes.ingredients} ingredients, ${sizes.events} events`);
console.log(`node ${machine.node}, ${machine.processors}, load ${machine.loadBefore.toFixed(2)} before`);

const ground = makeGround();
try {
  const figures = [];
  for (const name of positionals.length > 0 ? positionals : Object.keys(parts)) {
    const found = await parts[name]!(ground);
    for (const line of linesOf(found)) console.log(line);
    figures.push(...found);
  }
  if (values.json) writeFileSync(values.json, `${JSON.stringify({ sizes, machine, figures }, null, 2)}\n`);
} finally {
  await ground.close();
}
