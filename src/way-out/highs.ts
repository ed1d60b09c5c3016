import highs from 'highs';
import type { Solve } from '../core/way-out/ways.js';

// Proven to the last whole figure: without these a gap of a ten-thousandth would do.
const exactly = { mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false, random_seed: 0 };

// The types call it a CommonJS module, and it is loaded as an ES module, whose default is the loader itself.
const load = highs as unknown as typeof highs.default;

/** The solver of integer programs, loaded; what it could not decide throws, for that is no answer. */
export const loadSolver = async (): Promise<Solve> => {
  const solver = await load();
  return (program) => {
    const { Status, Columns } = solver.solve(program, exactly);
    if (Status === 'Infeasible') return undefined;
    if (Status !== 'Optimal') throw new Error(`the program was left undecided: ${Status}`);
    return new Map(
      Object.entries(Columns).map(([name, column]) => [name, (column as { Primal: number }).Primal]),
    );
  };
};
