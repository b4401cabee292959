/**
 * The integrator against the general-purpose library `odex` (explicit extrapolation; Hairer,
 * Norsett, Wanner) on the same right-hand side, over a time without events: legs on their way up.
 * Both are given the tolerance that brings them just below the same error against a much finer
 * integration; each state's error is in its own size.
 */
import { createRequire } from 'node:module';

const { Solver } = createRequire(import.meta.url)('odex');
const { Network } = await import('../../../packages/core/dist/network/index.js');
const { Machine } = await import('../../../packages/core/dist/machine/machine.js');
const { Record } = await import('../../../packages/core/dist/machine/record.js');
const { integrate, rodas3, rodas4 } = await import('../../../packages/core/dist/solver/index.js');

/** The legs have broken away and no door moves yet. */
const FROM = 1;
const SPAN = 1;

/** A network standing at FROM, with all its modes, and its state there. */
function stand(core, swing) {
  const network = new Network(swing, core.catalogues);
  const machine = new Machine(network, swing, Object.values(swing.cards)[0]);
  const y = network.initial({});
  const record = new Record(network.size, machine.epochs);
  const options = { method: rodas4, tolerance: 1e-5, maxSteps: 1e6, eventWidth: 1e-9 };
  integrate(machine, 0, FROM, y, options, record);
  return { network, y };
}

function own(network, y, method, tolerance) {
  const state = y.slice();
  const problem = {
    size: network.size,
    pattern: network.pattern,
    scale: network.scale,
    fast: network.fast,
    derivatives: (t, s, r) => network.derivatives(t, s, r),
    jacobian: (t, s, r, v) => network.jacobian(t, s, r, v),
    look: () => undefined,
    crossing: () => -1,
    mark: () => undefined,
    marked: () => -1,
    nextBreak: () => Infinity,
    longestStep: () => Infinity,
    jump: () => 'unchanged',
    nameOf: () => '',
  };
  const options = { method, tolerance, maxSteps: 1e6, eventWidth: 1e-9 };
  integrate(problem, FROM, FROM + SPAN, state, options, { step: () => undefined });
  return state;
}

function explicit(network, y, tolerance) {
  const solver = new Solver(network.size);
  solver.absoluteTolerance = Array.from(network.scale, (s) => tolerance * s);
  solver.relativeTolerance = Array.from(network.scale, () => 1e-14);
  solver.maxSteps = 1e7;
  solver.initialStepSize = 1e-6;
  const rate = new Float64Array(network.size);
  const state = new Float64Array(network.size);
  const slope = (t, s) => {
    state.set(s);
    network.derivatives(t, state, rate);
    return Array.from(rate);
  };
  return solver.solve(slope, FROM, Array.from(y), FROM + SPAN).y;
}

export default ({ core, measure, gearUnits }) => {
  const { network, y } = stand(core, gearUnits({ units: 2 }));
  const scale = network.scale.slice();
  const exact = own(network, y, rodas4, 1e-10);
  const error = (state) => Math.max(...scale.map((s, i) => Math.abs(state[i] - exact[i]) / s));
  /** The loosest of the tolerances, each a third of the one before, that keeps the error. */
  const fitting = (work, most) => {
    for (let tolerance = 1; tolerance > 1e-11; tolerance /= 3) {
      const found = error(work(tolerance));
      if (found <= most) return { tolerance, found };
    }
    return undefined;
  };
  return [1e-3, 1e-5, 1e-7].flatMap((most) => {
    const method = most > 1e-4 ? rodas3 : rodas4;
    const works = {
      own: (tolerance) => own(network, y, method, tolerance),
      odex: (tolerance) => explicit(network, y, tolerance),
    };
    let ownTime;
    return Object.entries(works).flatMap(([name, work]) => {
      const fit = fitting(work, most);
      if (fit === undefined) return [{ name: `${name}, error ${most}`, found: 'not reached' }];
      const runs = name === 'own' ? 51 : 21;
      const time = measure(() => work(fit.tolerance), { runs, warm: 5 });
      ownTime ??= time.median;
      return [
        {
          name: `${name}, error ${most}`,
          ...time,
          tolerance: fit.tolerance,
          'error found': fit.found,
          ...(name === 'own' ? {} : { 'times own': time.median / ownTime }),
        },
      ];
    });
  });
};
