/** Makes a map in a worker: one leads, others play what it wants to know, over ports of their own. */
import { blowDownMargin, minimumCharge, playBlowDown } from '@wheelwell/core';
import type { BlowDownCell, Scenario } from '@wheelwell/core';
import { FAILED, LOCKED, NOT_LOCKED, UNKNOWN } from './blow-down-message.js';
import { poolBehind } from './port-pool.js';
import { scenarioIn } from './reading.js';
import type { Condition, MapJob, MapPicture, MapReply, MapRequest } from './blow-down-message.js';
import { whyOf } from './why.js';

/** Time between two states of the map, ms. */
const PAUSE = 150;

type Tell = (reply: MapReply) => void;

/** Does what the page asks for; what goes wrong is told, too. */
export async function work(job: MapJob, tell: Tell): Promise<void> {
  try {
    if (job.kind === 'map') await lead(job.request, job.ports, tell);
    else player(job.request, job.port, job.least ? tell : undefined);
  } catch (error) {
    tell({ kind: 'broken', message: whyOf(error) });
  }
}

function scenarioOf(request: MapRequest): Scenario {
  const { card: name, faults } = request;
  const scenario = scenarioIn(request);
  const card = { ...scenario.cards[name], faults };
  return { ...scenario, cards: { ...scenario.cards, [name]: card } };
}

async function lead(request: MapRequest, ports: readonly MessagePort[], tell: Tell): Promise<void> {
  const { charge, temperature, card } = request;
  const scenario = scenarioOf(request);
  const units = Object.keys(scenario.units);
  let next = 0;
  const { cells, runs } = await blowDownMargin(
    scenario,
    { charge, temperature },
    {
      card,
      pool: poolBehind<Condition, BlowDownCell>(ports),
      onProgress: (share, known) => {
        const now = performance.now();
        if (now < next) return;
        next = now + PAUSE;
        tell({ kind: 'part', share, map: pictureOf(request, units, known) });
      },
    },
  );
  tell({ kind: 'whole', map: pictureOf(request, units, cells), runs });
}

function player(request: MapRequest, port: MessagePort, tell: Tell | undefined): void {
  const scenario = scenarioOf(request);
  const { card, at } = request;
  // Set first: what arrives meanwhile waits in the port.
  port.onmessage = (e: MessageEvent<Condition>) => {
    port.postMessage(playBlowDown(scenario, card, e.data));
  };
  if (tell === undefined) return;
  const { kind, charge } = minimumCharge(scenario, { card, temperature: at });
  tell({ kind: 'least', least: { kind, charge, temperature: at } });
}

const CODE = { locked: LOCKED, 'not locked': NOT_LOCKED, failed: FAILED } as const;

/** Cells as arrays. */
export function pictureOf(
  { charge, temperature }: Pick<MapRequest, 'charge' | 'temperature'>,
  units: readonly string[],
  cells: readonly (BlowDownCell | undefined)[],
): MapPicture {
  const each = (of: (cell: BlowDownCell) => number): Float32Array =>
    Float32Array.from(cells, (cell) => (cell === undefined ? NaN : of(cell)));
  return {
    charge,
    temperature,
    units,
    verdict: Uint8Array.from(cells, (c) => (c === undefined ? UNKNOWN : CODE[c.verdict])),
    computed: Uint8Array.from(cells, (c) => Number(c?.computed ?? false)),
    time: units.map((_, n) => each((c) => c.legs[n]?.time ?? NaN)),
    margin: units.map((_, n) => each((c) => c.legs[n]?.margin ?? NaN)),
    gasLeft: each((c) => c.gasLeft),
  };
}
