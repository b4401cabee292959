/** Others who play, each behind a port of its own. */

export interface PortPool<Job, Result> {
  play(
    jobs: readonly Job[],
    hear: (index: number, result: Result) => void,
    signal?: { readonly aborted: boolean },
  ): Promise<void>;
}

/**
 * Hands each port a job as soon as it has answered the one before; once aborted, no more.
 *
 * @param sender makes for each port what puts its jobs into messages; absent: they go as they are
 */
export function poolBehind<Job, Result>(
  ports: readonly MessagePort[],
  sender: () => (job: Job) => unknown = () => (job) => job,
): PortPool<Job, Result> {
  const senders = ports.map(sender);
  return {
    play: (jobs, hear, signal) =>
      new Promise((resolve) => {
        let next = 0;
        let open = jobs.length;
        if (open === 0) resolve();
        for (const [i, port] of ports.entries()) {
          const send = (job: Job): void => port.postMessage(senders[i](job));
          let mine = next++;
          if (mine >= jobs.length) return;
          port.onmessage = (e: MessageEvent<Result>) => {
            hear(mine, e.data);
            open -= 1;
            if (open === 0 || signal?.aborted === true) return resolve();
            mine = next++;
            if (mine < jobs.length) send(jobs[mine]);
          };
          send(jobs[mine]);
        }
      }),
  };
}
