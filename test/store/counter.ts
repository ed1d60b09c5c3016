import type { KyselyPlugin } from 'kysely';

/** Counts the queries that pass through it. */
export const counter = (): KyselyPlugin & { count: number } => ({
  count: 0,
  transformQuery({ node }) {
    this.count += 1;
    return node;
  },
  transformResult: async ({ result }) => result,
});
