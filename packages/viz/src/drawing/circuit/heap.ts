/** A binary heap of states by price. */
export class Heap {
  /** Price of the state popped last. */
  price = 0;
  #prices: number[] = [];
  #states: number[] = [];

  push(price: number, state: number): void {
    let i = this.#prices.length;
    this.#prices.push(price);
    this.#states.push(state);
    while (i > 0) {
      const up = (i - 1) >> 1;
      if ((this.#prices[up] ?? 0) <= price) break;
      this.#set(i, up);
      i = up;
    }
    this.#prices[i] = price;
    this.#states[i] = state;
  }

  /** The state of least price; -1 when there is none. */
  pop(): number {
    const first = this.#states[0] ?? -1;
    this.price = this.#prices[0] ?? 0;
    const price = this.#prices.pop();
    const state = this.#states.pop();
    const n = this.#prices.length;
    if (price === undefined || state === undefined || n === 0) return first;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      if (down >= n) break;
      if (down + 1 < n && (this.#prices[down + 1] ?? 0) < (this.#prices[down] ?? 0)) down += 1;
      if ((this.#prices[down] ?? 0) >= price) break;
      this.#set(i, down);
      i = down;
    }
    this.#prices[i] = price;
    this.#states[i] = state;
    return first;
  }

  #set(i: number, from: number): void {
    this.#prices[i] = this.#prices[from] ?? 0;
    this.#states[i] = this.#states[from] ?? 0;
  }
}
