/** What a search plays because it is like what fits. The swings are made up, so that every figure is known. */
import { describe, expect, it } from 'vitest';
import { evidencesOf } from '../../../packages/core/src/analysis/diagnosis/entry.js';
import { hypothesesOf } from '../../../packages/core/src/analysis/diagnosis/hypothesis.js';
import { Search, type Play } from '../../../packages/core/src/analysis/diagnosis/search.js';
import { setupsOf } from '../../../packages/core/src/analysis/diagnosis/setup.js';
import type {
  Signature,
  SignatureJob,
} from '../../../packages/core/src/analysis/diagnosis/shapes.js';
import { catalogues, readObservations } from '../../../packages/core/src/index.js';
import { aircraft } from '../../support/aircraft.js';

const { scenario: gear } = aircraft('hedgelark');
const { sheet } = readObservations(
  `wheelwell-observations: 1
swings:
  - { direction: up, times: { left: { moving: 0.9 s, locked: 7.2 s }, right: { moving: 0.9 s, locked: 7.2 s } } }
`,
  { scenario: gear },
);
const FAULT = 'line-pinhole';
/** No sides of each other. */
const [FOUND, LIKE, OTHER] = ['down-main', 'tail-down-line', 'tail-up-line'];
const SIDES = ['left-down-line', 'right-down-line'];

/** All that is not said here changes nothing. @param of what the fault makes of a swing at a device */
async function searched(
  of: (on: string, severity: number, drawn?: number) => Signature | undefined,
  sound: Signature = times(4, 4),
  devices: readonly string[] = [FOUND, LIKE, OTHER],
) {
  const setups = setupsOf(catalogues, gear, sheet!);
  const own = hypothesesOf(catalogues, gear, sheet!);
  const hypotheses = [
    ...own.filter(({ causes }) => causes.length === 0),
    ...devices.map((on) => ({ causes: [{ fault: FAULT, on }], prior: 0.02 })),
  ];
  const played: SignatureJob[] = [];
  const signature = ({ faults: [fault], drawn }: SignatureJob): Signature =>
    (fault && of(fault.on, fault.severity, drawn)) ?? sound;
  const play: Play = (jobs, hear) => {
    const found = jobs.map((job) => {
      played.push(job);
      return signature(job);
    });
    found.forEach((s, i) => hear?.(i, s));
    return Promise.resolve(found);
  };
  const search = new Search({
    ...{ catalogues, scenario: gear, setups, hypotheses, play, stopped: () => false },
    evidences: evidencesOf(gear, sheet!, setups.of),
  });
  await search.run();
  const best = (on: string): number => {
    const profile = search.profiles.find((p) => p.hypothesis.causes[0]?.on === on);
    return profile === undefined ? -Infinity : search.weighing!.quick(profile).log;
  };
  const foretold = (on: string) => {
    const profile = search.profiles.find((p) => p.hypothesis.causes[0]?.on === on)!;
    const { foretold: vectors, offNominal } = search.weighing!.quick(profile);
    return { offNominal, locked: search.keys.named(vectors[0])['up/left/locked'] };
  };
  return { best, played, foretold };
}

function times(left: number, right: number, moving = 0.5): Signature {
  return {
    ...{ up: 1, 'up/window': 20, 'up/left/moved': 1, 'up/right/moved': 1 },
    ...{ 'up/left/moving': moving, 'up/right/moving': moving },
    ...{ 'up/left/locked': left, 'up/right/locked': right },
  };
}

/** Ever slower, and later to move. */
const slower = (severity: number): Signature =>
  times(4 + 4.4 * severity, 4 + 4.4 * severity, 0.5 + 0.55 * severity);

describe('the like of what fits', () => {
  it('is played where that fits, though a figure at its worst speaks against it', async () => {
    const strange = { up: 1, 'up/left/moved': 1, 'up/right/moved': 1, 'up/window': 20 };
    const { best, played } = await searched((on, severity) => {
      if (on === FOUND) return slower(severity);
      if (on !== LIKE) return undefined;
      return severity > 0.95 || severity < 0.68
        ? { ...strange, 'up/left/moving': 0.05, 'up/right/moving': 0.05 }
        : slower(severity);
    });
    // It fits as well, at fewer severities.
    expect(best(LIKE)).toBeGreaterThan(best(FOUND) - 3);
    const at = played.flatMap(({ faults: [f] }) => (f?.on === LIKE ? [f.severity] : []));
    expect(Math.min(...at.map((s) => Math.abs(s - 0.73)))).toBeLessThan(0.05);
  });

  it('is not believed for it', async () => {
    const { best, played } = await searched((on, s) => (on === FOUND ? slower(s) : undefined));
    expect(best(OTHER)).toBeLessThan(best(FOUND) - 10);
    // The sound aircraft, its unknowns, and few beside.
    const faulty = played.filter(({ faults }) => faults.length > 0);
    expect(faulty.length).toBeLessThan(20);
  });

  it('is left alone where a sound aircraft explains the sheet', async () => {
    const { played } = await searched(
      (_, s) => times(7.2 + s / 10, 7.2, 0.9),
      times(7.2, 7.2, 0.9),
    );
    const at = played.flatMap(({ faults: [f] }) => (f ? [f.severity] : []));
    expect(new Set(at)).toEqual(new Set([1]));
  });
});

describe('what the other side has lent its figures to', () => {
  const worst = (played: readonly SignatureJob[]) =>
    played.flatMap(({ faults: [f] }) => (f?.severity === 1 ? [f.on] : []));

  it('is played itself before nothing is said to fit well', async () => {
    // Both sides look alike on the sheet: the left is played for both, and changes nothing.
    const { best, played } = await searched(
      (on, s) => (on === SIDES[1] ? slower(s) : undefined),
      times(4, 4),
      SIDES,
    );
    expect(worst(played)).toEqual(SIDES);
    expect(best(SIDES[1])).toBeGreaterThan(best(SIDES[0]) + 10);
  });

  it('is not where the one that was played fits', async () => {
    const { best, played } = await searched(
      (on, s) => (on === SIDES[0] ? slower(s) : times(4, 4 + 8 * s)),
      times(4, 4),
      SIDES,
    );
    expect(best(SIDES[0])).toBeGreaterThan(best(SIDES[1]) + 10);
    expect(worst(played).filter((on) => on === SIDES[0])).toHaveLength(1);
  });
});

describe('what fits narrowly', () => {
  /** About one severity the legs take as long as was noted, and set out as late only in a window there. */
  const window = (s: number, there: boolean): Signature => {
    const moving = there && s > 0.865 && s < 0.875 ? 0.9 : 0.2;
    if (s < 0.855) return times(4, 4, 0.5);
    return s < 0.885 ? times(7.2, 7.2, moving) : times(9, 9, 0.5);
  };

  it('is looked at beside where it was played, too: there it may fit much better', async () => {
    const [with_, without] = await Promise.all([
      searched((on, s) => (on === FOUND ? window(s, true) : undefined)),
      searched((on, s) => (on === FOUND ? window(s, false) : undefined)),
    ]);
    const at = with_.played.flatMap(({ faults: [f] }) => (f?.on === FOUND ? [f.severity] : []));
    expect(at.some((s) => s > 0.865 && s < 0.875)).toBe(true);
    expect(with_.best(FOUND)).toBeGreaterThan(without.best(FOUND) + 3);
  });
});

describe('where nothing fits well', () => {
  /** On every second aircraft it comes as it was noted, on the nominal one the legs lock at once. */
  const decided = (on: string, s: number, drawn?: number): Signature | undefined => {
    if (on !== FOUND) return undefined;
    return drawn !== undefined && drawn % 2 === 1 ? times(7.2, 7.2, 0.9) : times(2, 2, 0.5 + s);
  };

  it('the likeliest are played on other aircraft within the tolerances', async () => {
    const { best, played, foretold } = await searched(decided);
    const drawn = played.filter((job) => job.drawn !== undefined);
    // The sound one, too: its scatter must not be taken for a fault.
    expect(new Set(drawn.map(({ faults: [f] }) => f?.on))).toContain(undefined);
    expect(best(FOUND)).toBeGreaterThan(best(OTHER) + 10);
    expect(foretold(FOUND)).toMatchObject({ offNominal: true, locked: 7.2 });
  });

  it('a cause that is so on half of them counts for half of that half', async () => {
    const [all, half] = await Promise.all([
      searched((on, s, drawn) => (drawn === undefined ? decided(on, s) : decided(on, s, 1))),
      searched(decided),
    ]);
    expect(all.best(FOUND) - half.best(FOUND)).toBeCloseTo(Math.log(2), 1);
  });

  it('is not done where something does', async () => {
    const { played } = await searched((on, s) => (on === FOUND ? slower(s) : undefined));
    expect(played.filter((job) => job.drawn !== undefined)).toEqual([]);
  });
});

describe('what only another swing of the sheet shows', () => {
  it('is played under that one, however many are as likely until then', async () => {
    const twice = readObservations(
      `wheelwell-observations: 1
swings:
  - { direction: up, times: { left: { locked: 4 s }, right: { locked: 4 s } } }
  - { direction: up, conditions: { supply-flow: 2 gal/min }, times: { left: { locked: 16 s }, right: { locked: 16 s } } }
`,
      { scenario: gear },
    ).sheet!;
    const setups = setupsOf(catalogues, gear, twice);
    const hypotheses = hypothesesOf(catalogues, gear, twice);
    const rarest = [...hypotheses].sort((a, b) => a.prior - b.prior)[0];
    const [{ fault, on }] = rarest.causes;
    const [usual, slow] = [times(4, 4), times(8, 8)];
    const play: Play = (jobs, hear) => {
      const found = jobs.map(({ setup, faults: [f] }) => {
        if (setup === 0) return usual;
        return f?.fault === fault && f.on === on ? times(8 + 16 * f.severity, 16) : slow;
      });
      found.forEach((s, i) => hear?.(i, s));
      return Promise.resolve(found);
    };
    const search = new Search({
      ...{ catalogues, scenario: gear, setups, hypotheses, play, stopped: () => false },
      evidences: evidencesOf(gear, twice, setups.of),
    });
    await search.run();
    // More than are looked at in the first place.
    expect(hypotheses.length).toBeGreaterThan(120);
    const ranked = search.profiles.map((p) => ({ p, log: search.weighing!.quick(p).log }));
    const first = ranked.reduce((a, b) => (b.log > a.log ? b : a));
    expect(first.p.hypothesis).toBe(rarest);
  });
});
