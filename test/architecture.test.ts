import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { expect, test } from 'vitest';

/** Who may know whom: each ring what is inside it and itself. */
const rings: [ring: RegExp, knows: RegExp][] = [
  [/^migrations\//, /^migrations\/|^kysely$/],
  [
    /^src\/core\//,
    /^shared\/|^src\/core\/|^(zod|temporal-polyfill|htmlparser2|csv-(parse|stringify)(\/sync)?)$/,
  ],
  [
    /^src\/store\//,
    /^shared\/|^src\/(core|store)\/|^migrations\/|^(node:|kysely$|pg$|@electric-sql\/pglite)/,
  ],
  [/^src\/way-out\//, /^src\/(core|way-out)\/|^(node:|highs$)/],
  [/^src\/web\//, /^(?!src\/(app|main)\.|src\/commands\/|migrations\/|kysely|pg$|@electric-sql)/],
  [/^src\/(app|config|port)\.ts$/, /^(?!src\/(main\.|commands\/)|migrations\/|kysely|pg$|@electric-sql)/],
  [/^src\/(main\.ts|commands\/)/, /^(?!migrations\/|kysely|pg$|@electric-sql)/],
];

const files = ['migrations', 'src'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name)),
);

// Statements alone: the words "from" and "import" stand in sentences too.
const statement = /(?:^(?:import|export|\})[^;\n]*\bfrom |^import |\bimport\()'([^'\n]+)'/gm;

const importsOf = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(statement)].map(([, name = '']) =>
    name.startsWith('.') ? normalize(join(dirname(file), name)).replace(/\.js$/, '.ts') : name,
  );

test.each(files)('%s knows only the rings inside it', (file) => {
  const knows = rings.find(([ring]) => ring.test(file))?.[1];
  expect(knows, 'every file lies in a ring').toBeDefined();
  expect(importsOf(file).filter((name) => !knows?.test(name))).toEqual([]);
});

test.each(files.filter((file) => file.startsWith('src/core/')))(
  '%s awaits nothing and reads no clock',
  (file) => {
    expect(readFileSync(file, 'utf8')).not.toMatch(
      /\bawait\b|\basync\b|Date\.now|new Date\(\)|Temporal\.Now|Math\.random/,
    );
  },
);

test('the rule sees what is wrong', () => {
  const core = rings[1]![1];
  expect(
    ['src/store/rows.ts', 'kysely', 'node:fs', 'src/web/page.ts'].filter((name) => core.test(name)),
  ).toEqual([]);
  expect(rings[2]![1].test('src/web/page.ts')).toBe(false);
  expect(importsOf('test/architecture.test.ts')).toEqual(['node:fs', 'node:path', 'vitest']);
  expect(importsOf('src/core/scaling.ts')).toContain('src/core/batch.ts');
});
