import { expect, test } from 'vitest';
import { loggedError, loggedRequest } from '../../src/web/logged.js';

test('the log has neither what was looked for nor the row that a database complains of', () => {
  expect(loggedRequest({ method: 'GET', url: '/find?q=Moss' })).toEqual({ method: 'GET', path: '/find' });
  const error = Object.assign(new Error('duplicate key value violates unique constraint "guest_key"'), {
    code: '23505',
    detail: 'Key (name_key)=(moss) already exists.',
    where: 'Moss, vegan',
  });
  const logged = loggedError(error);
  expect(JSON.stringify(logged)).not.toMatch(/moss|vegan/i);
  expect(logged).toMatchObject({ type: 'Error', code: '23505' });
  expect(logged.stack).toContain('logged.test.ts');
});
