/** A card that ends with the gear left to itself: selector in neutral, nothing supplied. */
import type { Card, CardStep, Catalogues, Evidence, Scenario } from '../../define/index.js';

/** What every lever and supply is put to, where it has that. */
const REST: Readonly<Record<string, string>> = {
  lever: 'neutral',
  command: 'off',
  on: 'off',
  pumping: 'off',
};

/** @param run the card's own run, @param at when it is left, s, @param span for how long, s */
export function leave(
  catalogues: Catalogues,
  scenario: Scenario,
  run: Evidence,
  at: number,
  span: number,
): Card {
  const { card } = run;
  const rests = Object.entries(scenario.components).flatMap(([device, { is }]) =>
    Object.entries(catalogues.components[is].inputs ?? {}).flatMap(([input, d]): CardStep[] => {
      if (input === 'speed') return [{ at, device, input, value: 0, text: '0 rpm' }];
      const text = REST[input] ?? '';
      const value = d.choices?.indexOf(text) ?? -1;
      return value < 0 ? [] : [{ at, device, input, value, text }];
    }),
  );
  return { ...card, duration: at + span, steps: [...before(run, at), ...rests] };
}

/** The steps that the run had come to; those that wait for something are counted, device by device. */
function before({ card, log }: Evidence, at: number): CardStep[] {
  const open = new Map<string, number>();
  for (const x of log)
    if (x.kind === 'operator' && x.t < at) open.set(x.device, (open.get(x.device) ?? 0) + 1);
  const timed = card.steps.filter((s) => s.after === undefined && s.at < at);
  for (const s of timed) open.set(s.device, (open.get(s.device) ?? 0) - 1);
  const waiting = card.steps.filter((s) => {
    const left = s.after === undefined ? 0 : (open.get(s.device) ?? 0);
    if (left > 0) open.set(s.device, left - 1);
    return left > 0;
  });
  return [...timed, ...waiting];
}
