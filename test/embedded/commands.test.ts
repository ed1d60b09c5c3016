import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { workbookText } from '../../src/core/exchange/workbook.js';
import { exampleKitchen } from '../world.js';
import { newFolder, run } from './program.js';

const command = (name: string, DATA_DIR: string, ...args: string[]) =>
  run(`src/commands/${name}.js`, { DATA_DIR }, ...args);

test('a kitchen is migrated, seeded, backed up and restored elsewhere as the same file', async () => {
  const [here, there] = [newFolder(), newFolder()];
  expect(await command('migrate', here)).toMatchObject({
    code: 0,
    out: expect.stringMatching(/^The embedded database is at step \d{4}-/),
  });
  expect(await command('backup', here)).toMatchObject({
    code: 0,
    out: expect.stringContaining('There is no kitchen yet'),
  });
  expect(await command('seed', here)).toMatchObject({ code: 0 });
  expect(await command('seed', here)).toMatchObject({
    code: 1,
    err: expect.stringContaining('There is a kitchen here already'),
  });

  const { out } = await command('backup', here);
  const file = /kept in (.+)/.exec(out)?.[1] ?? '';
  expect(readFileSync(file, 'utf8')).toBe(workbookText(exampleKitchen()));
  expect(await command('restore', there, file)).toMatchObject({
    code: 0,
    out: expect.stringMatching(/^Tansy Yard Kitchen is restored: \d+ recipes, 3 events\./),
  });
  const again = /kept in (.+)/.exec((await command('backup', there)).out)?.[1] ?? '';
  expect(readFileSync(again)).toEqual(readFileSync(file));
});

test('a wrong file is refused with each fault and its place, and nothing changes', async () => {
  const dir = newFolder();
  await command('seed', dir);
  const wrong = join(dir, 'wrong.json');
  const [first] = exampleKitchen().recipes;
  writeFileSync(
    wrong,
    workbookText(exampleKitchen()).replace(`"name": ${JSON.stringify(first!.name)}`, '"title": "x"'),
  );
  const { code, err } = await command('restore', dir, wrong);
  expect(code).toBe(1);
  expect(err).toContain(`recipes, ${first!.key}, name: This is missing.`);
  expect(err).toContain(`recipes, ${first!.key}, title: There is no field of this name here`);
  expect(readdirSync(dir)).not.toContain('backups');
  expect(await command('restore', dir)).toMatchObject({
    code: 1,
    err: expect.stringContaining('Name the workbook file'),
  });
  expect(await command('restore', dir, join(dir, 'none.json'))).toMatchObject({
    code: 1,
    err: expect.stringContaining('cannot be read (ENOENT)'),
  });
});
