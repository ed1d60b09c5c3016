import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Everything that must hold before a change lands. Each stage runs whatever became of the one before. */
const stages: { name: string; command: string[]; counts?: true }[] = [
  { name: 'format and lint', command: ['biome', 'ci', '--error-on-warnings'] },
  { name: 'types', command: ['tsc', '--noEmit', '-p', '.'] },
  { name: 'tests on the embedded engine', command: ['vitest', 'run', '--project', 'unit'], counts: true },
  {
    name: 'tests on PostgreSQL',
    command: [
      'node',
      'dist/test/with-postgres.js',
      'npx',
      '--no-install',
      'vitest',
      'run',
      '--project',
      'unit',
    ],
    counts: true,
  },
  { name: 'browser tests', command: ['vitest', 'run', '--project', 'browser'], counts: true },
];

const folder = mkdtempSync(join(tmpdir(), 'workbook-check-'));
const results = stages.map(({ name, command, counts }, place) => {
  console.log(`\n== ${name}`);
  const report = join(folder, `${place}.json`);
  const reporting = counts ? ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`] : [];
  const begun = Date.now();
  const [program = '', ...args] = command[0] === 'node' ? command : ['npx', '--no-install', ...command];
  const { status } = spawnSync(program, [...args, ...reporting], { stdio: 'inherit' });
  const seconds = Math.round((Date.now() - begun) / 1000);
  return { name, ok: status === 0, seconds, ...(counts ? totals(report) : { passed: 0, failed: 0 }) };
});

function totals(report: string): { passed: number; failed: number } {
  try {
    const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, 'utf8'));
    return { passed: numPassedTests, failed: numFailedTests };
  } catch {
    return { passed: 0, failed: 1 }; // a runner that did not finish counts as a failure
  }
}

rmSync(folder, { recursive: true, force: true });
console.log('');
for (const { name, ok, seconds, passed, failed } of results) {
  const tests = passed + failed > 0 ? `, ${passed} passed, ${failed} failed` : '';
  console.log(`${ok ? 'ok    ' : 'FAILED'} ${name} (${seconds} s${tests})`);
}
const sum = (count: (one: (typeof results)[number]) => number) =>
  results.reduce((all, one) => all + count(one), 0);
const broken = results.filter(({ ok, failed }) => !ok && failed === 0).length;
console.log(`\n${sum(({ passed }) => passed)} passed, ${sum(({ failed }) => failed) + broken} failed`);
process.exitCode = results.every(({ ok }) => ok) ? 0 : 1;
