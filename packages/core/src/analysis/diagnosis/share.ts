/** Of which other causes a swing tells that was played for one: those that do the same, and its like on the other side. */
import type { Catalogues, Scenario } from '../../define/index.js';
import { SWING_DIRECTIONS } from '../../observation/index.js';
import { Effects } from './effect.js';
import { keyOf } from './hypothesis.js';
import { lent, mirrored } from './mirror.js';
import type { Hypothesis, Signature } from './shapes.js';

/** What a swing of another cause tells of this one. */
export interface Told {
  readonly hypothesis: Hypothesis;
  readonly severity: number;
  readonly signature: Signature;
  /** From the other side, where the like is nearly the same. */
  readonly borrowed: boolean;
}

export class Sharing {
  private readonly effects: Effects;
  /** Those that can do the same to the same part, each with itself. */
  private readonly kin = new Map<Hypothesis, readonly Hypothesis[]>();
  private readonly others = new Map<Hypothesis, Hypothesis>();

  /** @param hypotheses single faults */
  constructor(
    catalogues: Catalogues,
    scenario: Scenario,
    private readonly hypotheses: readonly Hypothesis[],
  ) {
    this.effects = new Effects(catalogues, scenario);
    const byName = new Map(hypotheses.map((h) => [keyOf(h.causes), h]));
    const families = new Map<string, Hypothesis[]>();
    for (const h of hypotheses) {
      const family = this.effects.family(h.causes[0]);
      const own = families.get(family) ?? [];
      families.set(family, own);
      own.push(h);
      this.kin.set(h, own);
      const other = mirrored(scenario, h.causes[0]);
      const known = other && byName.get(keyOf([other]));
      if (known !== undefined) this.others.set(h, known);
    }
  }

  /** Whether it is as bad at any severity. */
  abrupt({ causes: [cause] }: Hypothesis): boolean {
    return this.effects.abrupt(cause);
  }

  /** Those that tell of all the others when they are played at one severity, in the order given; of both sides without borrowing. */
  tellers(severity: number, { borrowing = true } = {}): readonly Hypothesis[] {
    const told = new Set<Hypothesis>();
    return this.hypotheses.filter((h) => {
      if (told.has(h)) return false;
      for (const { hypothesis, severity: s } of this.alike(h, severity))
        if (s === severity) {
          told.add(hypothesis);
          const other = this.others.get(hypothesis);
          if (borrowing && other !== undefined) told.add(other);
        }
      return true;
    });
  }

  /** All that a swing tells of: itself, what does the same, and the like of these on the other side. */
  told(
    hypothesis: Hypothesis,
    severity: number,
    signature: Signature,
    healthy: Signature,
  ): readonly Told[] {
    const own = this.alike(hypothesis, severity);
    const mirrored = own.flatMap((alike) => {
      const other = this.others.get(alike.hypothesis);
      return other === undefined ? [] : [{ hypothesis: other, severity: alike.severity }];
    });
    const played = own.map((alike) => ({ ...alike, signature, borrowed: false }));
    if (mirrored.length === 0 || !sameWays(healthy, signature)) return played;
    const across = lent(healthy, signature);
    return [
      ...played,
      ...mirrored.map((other) => ({ ...other, signature: across, borrowed: true })),
    ];
  }

  private alike(
    hypothesis: Hypothesis,
    severity: number,
  ): readonly { readonly hypothesis: Hypothesis; readonly severity: number }[] {
    const [cause] = hypothesis.causes;
    return (this.kin.get(hypothesis) ?? [hypothesis]).flatMap((h) => {
      const same = h === hypothesis ? severity : this.effects.alike(cause, severity, h.causes[0]);
      return same === undefined ? [] : [{ hypothesis: h, severity: same }];
    });
  }
}

/** Where a movement was never begun the card waited for one side, and would not have for the other. */
const sameWays = (a: Signature, b: Signature): boolean =>
  SWING_DIRECTIONS.every((way) => (a[way] === undefined) === (b[way] === undefined));
