/** The day on which the bench looks at its kitchen, a Wednesday morning. */
export const today = '2026-10-14';
export const now = new Date(`${today}T07:20:00Z`);

const day = 24 * 60 * 60 * 1000;

export const daysFrom = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * day).toISOString().slice(0, 10);
