/** The swings of a sheet as something to play: a card without faults, under the conditions noted. */
import type { Card, Catalogues, Scenario } from '../../define/index.js';
import { simulateWith, type SimulatedRun } from '../../machine/index.js';
import {
  expectedSwings,
  LEFT_FOR,
  lineNodes,
  type ObservationConditions,
  type ObservationSheet,
  type ObservedSwing,
  type Remark,
  type SwingDirection,
} from '../../observation/index.js';
import { blowDownCards } from '../blow-down/card.js';
import { endingAt } from './ending.js';
import { leave } from './leave.js';
import { swingChecks } from './next-check.js';
import { patient } from './patient.js';
import type { SwingSetup } from './shapes.js';
import { soundRun } from './sound-run.js';
import { telling, under } from './under.js';

export interface Setup extends SwingSetup {
  /** The ways that the swings of the sheet went under it. */
  readonly directions: ReadonlySet<SwingDirection>;
  /** The sound gear's run, where it was played just so far to see how far it has to be. */
  readonly run?: SimulatedRun;
}

/** Before it is known how far it has to be played. */
interface Draft extends Omit<Setup, 'reading' | 'run'> {
  /** Place of the setup that it is played as far as; absent: that is worked out by playing it. */
  readonly like?: number;
  /** How long it is left to itself, s. */
  readonly leftFor?: number;
  /** The longest that was noted of it, s from the selector. */
  readonly noted: number;
}

/** More different conditions than these nobody waits for: each is played for every cause that is left. */
const MOST_SETUPS = 8;

/** The setups of a sheet, then those of the swings that could be made next. */
export interface Setups {
  readonly setups: SetupList;
  /** For each swing of the sheet the place of its setup; -1 for those that are too many. */
  readonly of: readonly number[];
  /** How many are the sheet's own. */
  readonly own: number;
  /** Which check the others stand for. */
  readonly checks: readonly string[];
}

/** Setups, each made when it is asked for: that takes a swing or two. */
export class SetupList {
  private readonly made: (Setup | undefined)[];
  private readonly played = new Map<number, SwingSetup>();

  constructor(
    private readonly drafts: readonly Draft[],
    private readonly finish: (draft: Draft) => Setup,
  ) {
    this.made = drafts.map(() => undefined);
  }

  at(place: number): Setup {
    return (this.made[place] ??= this.finish(this.drafts[place]));
  }

  /** One and the same each time. */
  toPlay(place: number): SwingSetup {
    const { key, scenario, card, reading, ending } = this.at(place);
    const setup = this.played.get(place) ?? {
      key,
      scenario,
      card,
      reading,
      ...(ending && { ending }),
    };
    this.played.set(place, setup);
    return setup;
  }
}

export function setupsOf(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
): Setups {
  const keys: string[] = [];
  const setups: (Draft & { directions: Set<SwingDirection>; noted: number })[] = [];
  // A sheet may have thousands of rows under the same few conditions.
  const told = new Map<string, ObservationConditions>();
  const standing = (swing: ObservedSwing) => {
    const noted = { ...sheet.conditions, ...swing.conditions };
    const card = cardFor(catalogues, scenario, sheet, swing);
    const key = JSON.stringify([card, noted]);
    const conditions = told.get(key) ?? telling(catalogues, scenario, card, noted);
    told.set(key, conditions);
    return { noted, card, conditions };
  };
  const of = sheet.swings.map((swing) => {
    const { noted, card, conditions } = standing(swing);
    const leftFor = leftAfter(swing, noted);
    const key = JSON.stringify([card, conditions, ...(leftFor === undefined ? [] : [leftFor])]);
    let place = keys.indexOf(key);
    if (place < 0) {
      if (setups.length >= MOST_SETUPS) return -1;
      place = keys.push(key) - 1;
      setups.push({
        key,
        ...under(catalogues, scenario, card, conditions),
        directions: new Set(),
        ...(leftFor !== undefined && { leftFor }),
        noted: 0,
      });
    }
    setups[place].directions.add(swing.direction);
    setups[place].noted = Math.max(setups[place].noted, ...notedTimes(swing));
    return place;
  });
  const own = setups.length;
  const first = sheet.swings.find((s) => s.direction !== 'blow-down');
  const checks: string[] = [];
  if (first !== undefined) {
    const { card, conditions } = standing(first);
    const directions = new Set(sheet.swings.map((s) => s.direction));
    for (const [kind, change] of swingChecks()) {
      const made = under(catalogues, scenario, card, conditions, change);
      if (made === undefined) continue;
      const key = `${kind} ${JSON.stringify([card, conditions])}`;
      const longest = Math.max(0, ...sheet.swings.flatMap(notedTimes));
      const like = of[sheet.swings.indexOf(first)];
      setups.push({ key, ...made, directions, noted: longest, ...(like >= 0 && { like }) });
      checks.push(kind);
    }
  }
  const asked = new Set(sheet.swings.flatMap((s) => Object.keys(s.gauges)));
  const list: SetupList = new SetupList(setups, (s) => {
    const like = s.like === undefined ? undefined : list.at(s.like);
    return like === undefined || like.reading.leftAt !== undefined
      ? finished(catalogues, scenario, s, asked)
      : alike(s, like);
  });
  return { setups: list, of, own, checks };
}

/** Nobody waits longer, s: a gear pumped up by hand takes two or three minutes (an owners' manual of 1971). */
const LONGEST = 200;

/** What came open again was looked at for longer than a swing takes, s (common practice, no source). */
const LINGERED = 30;

const remarked = ({ remarks }: ObservedSwing, remark: Remark): boolean =>
  Object.values(remarks).some((r) => r.includes(remark));

const notedTimes = (swing: ObservedSwing): number[] => [
  ...Object.values(swing.times)
    .flatMap((of) => Object.values(of).map((t) => t.at))
    .filter((t) => t <= LONGEST),
  ...(remarked(swing, 'doors came open again') ? [LINGERED] : []),
];

/** How long it was left to itself: as noted, or as long as what was seen of it takes. */
function leftAfter(swing: ObservedSwing, { leftFor }: ObservationConditions): number | undefined {
  if (leftFor !== undefined) return leftFor;
  const seen =
    Object.values(swing.gauges).some((g) => g.after !== undefined) ||
    remarked(swing, 'drifts when neutral');
  return seen ? LEFT_FOR : undefined;
}

/** The sheet's card; else the first that has no faults of its own and goes the way asked for. */
function cardFor(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
  swing: ObservedSwing,
): string {
  const blown = blowDownCards(scenario, catalogues);
  const fits = (name: string): boolean =>
    blown.includes(name) === (swing.direction === 'blow-down');
  if (Object.hasOwn(scenario.cards, sheet.card) && fits(sheet.card)) return sheet.card;
  const names = Object.keys(scenario.cards).filter(fits);
  return (
    names.find((name) => scenario.cards[name].faults.length === 0) ??
    names[0] ??
    Object.keys(scenario.cards)[0]
  );
}

/** As far as another setup of the same card. */
function alike({ key, scenario, card, directions }: Draft, { run: _, ...like }: Setup): Setup {
  const { temperature } = scenario.cards[card];
  const same = { ...like.scenario.cards[card], ...(temperature !== undefined && { temperature }) };
  return {
    ...like,
    key: `${key} as ${like.key}`,
    card,
    directions,
    scenario: { ...scenario, cards: { ...scenario.cards, [card]: same } },
  };
}

/**
 * The card as far as it has to be played: to where the operator begins the first movement that nobody asks for, or,
 * where it was left to itself, on from the end of the movement before that.
 */
function finished(
  catalogues: Catalogues,
  own: Scenario,
  draft: Draft,
  asked: ReadonlySet<string>,
): Setup {
  const { card: name, directions, leftFor, noted, ...rest } = draft;
  const play = (of: Scenario, more: number) =>
    soundRun(own, `${rest.key} ${more}`, () =>
      simulateWith(catalogues, of, { card: name, tolerance: 'draft' }),
    );
  const { scenario, run, longer } = patient(draft, play);
  const moves = expectedSwings(run);
  const usual = new Set([...lineNodes(run), ...moves.flatMap((m) => Object.keys(m.gauges))]);
  const nodes = [...asked].filter((node) => !usual.has(node)).sort();
  const setup = { ...rest, card: name, directions, reading: { nodes } };
  const withCard = (card: Card, ...key: readonly unknown[]) => ({
    ...setup,
    // How far it is played and what is read belong to what it is.
    key: [setup.key, ...(longer > 0 ? ['longer', longer] : []), ...key, ...nodes].join(' '),
    scenario: { ...scenario, cards: { ...scenario.cards, [name]: card } },
  });
  const card = scenario.cards[name];
  if (leftFor !== undefined) {
    const first = moves.findIndex((m) => directions.has(m.direction));
    const leftAt = moves[first + 1]?.start ?? run.duration;
    const made = withCard(leave(catalogues, scenario, run, leftAt, leftFor), 'left', leftAt);
    return { ...made, reading: { nodes, leftAt } };
  }
  const last = moves.findLastIndex((m) => directions.has(m.direction));
  const next = moves[last + 1];
  if (last < 0 || next === undefined) return { ...withCard(card), run };
  const ending = endingAt(run, next.start);
  // Selected by something else than a hand, it is cut there.
  if (ending === undefined) return withCard({ ...card, duration: next.start }, next.start);
  // A card that waits for the gear before it goes on waits on where the gear never comes.
  return { ...withCard(card, 'to', ending.device, ending.to, ending.time), ending };
}
