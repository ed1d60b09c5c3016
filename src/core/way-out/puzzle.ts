/** What could be put before guests in one course. */
export type Offer = {
  key: string;
  /** 1 where it is one more dish to make; 0 where it is on the menu anyway. */
  extra: 0 | 1;
  /** Guests it feeds at most; null for as many as it is made for. */
  feeds: number | null;
  /** Minutes of work it adds, whole. */
  work: number;
};

/** What a guest takes of an offer: its cost in hundredths of a minor unit, whole; null when it is not known. */
export type Take = { offer: number; cost: number | null };

/** Guests who eat alike in one course, and what they can eat there. Offers are named by their place. */
export type Need = { key: string; guests: number; takes: Take[] };

export type Puzzle = { offers: Offer[]; needs: Need[] };

/** So many guests of a need are given an offer. */
export type Served = { need: number; offer: number; guests: number };

/** What a way out comes to, in the order in which less is better. */
export type Figures = { extra: number; unpriced: number; cost: number; work: number };
export const aims = ['extra', 'unpriced', 'cost', 'work'] as const;
export type Aim = (typeof aims)[number];

/** Every need met; `open` are the dishes that are made besides. */
export type Way = { served: Served[]; open: number[]; figures: Figures };

/** Less is better, the first figure that differs decides. */
export const compareFigures = (a: Figures, b: Figures): number => {
  for (const aim of aims) if (a[aim] !== b[aim]) return a[aim] - b[aim];
  return 0;
};

/** What serving guests so comes to: dishes besides, portions without a known cost, cost and minutes; whole figures. */
export const figuresOf = ({ offers, needs }: Puzzle, served: readonly Served[]): Figures => {
  const used = new Set(served.map(({ offer }) => offer));
  const figures: Figures = { extra: 0, unpriced: 0, cost: 0, work: 0 };
  for (const at of used) {
    figures.extra += offers[at]!.extra;
    figures.work += offers[at]!.work;
  }
  for (const { need, offer, guests } of served) {
    const { cost } = needs[need]!.takes.find((take) => take.offer === offer)!;
    if (cost === null) figures.unpriced += guests;
    else figures.cost += cost * guests;
  }
  return figures;
};

/** The needs that share offers with each other, apart from all others: each part can be solved by itself. */
export const partsOf = ({ needs }: Puzzle): number[][] => {
  const first = new Map<number, number>();
  const part = needs.map((_, at) => at);
  const rootOf = (at: number): number => (part[at] === at ? at : rootOf(part[at]!));
  needs.forEach(({ takes }, at) => {
    for (const { offer } of takes) {
      const other = first.get(offer);
      if (other === undefined) first.set(offer, at);
      else part[rootOf(at)] = rootOf(other);
    }
  });
  const parts = new Map<number, number[]>();
  needs.forEach((_, at) => {
    const root = rootOf(at);
    parts.set(root, [...(parts.get(root) ?? []), at]);
  });
  return [...parts.values()];
};
