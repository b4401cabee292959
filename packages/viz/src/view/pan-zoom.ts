/** Moves a drawing about under the pointer: wheel, drag, two fingers, buttons. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';

export interface Sheet {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const CLOSEST = 10;
/** A pointer that moves less than this is a click, px. */
const CLICK = 6;
/** Zoom of one step of a button or key. */
export const STEP = 1.4;

export class PanZoom implements ReactiveController {
  /** How much larger than fitted. */
  zoom = 1;
  #x = 0;
  #y = 0;
  #whole: Sheet = { left: 0, top: 0, width: 1, height: 1 };
  #pointers = new Map<number, { x: number; y: number }>();
  #moved = 0;

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  hostConnected(): void {
    this.#pointers.clear();
  }

  /** What is seen of a drawing in a frame of the given size: all of it at zoom 1. */
  view(drawing: Sheet, width: number, height: number): Sheet {
    const shape = width / height;
    const w = Math.max(drawing.width, drawing.height * shape);
    const h = w / shape;
    this.#whole = {
      left: drawing.left - (w - drawing.width) / 2,
      top: drawing.top - (h - drawing.height) / 2,
      width: w,
      height: h,
    };
    const [vw, vh] = [w / this.zoom, h / this.zoom];
    this.#x = Math.min(Math.max(this.#x, 0), w - vw);
    this.#y = Math.min(Math.max(this.#y, 0), h - vh);
    return {
      left: this.#whole.left + this.#x,
      top: this.#whole.top + this.#y,
      width: vw,
      height: vh,
    };
  }

  /** Closer or wider about a point of the frame, as shares of its size. */
  by(factor: number, fx = 0.5, fy = 0.5): void {
    const next = Math.min(Math.max(this.zoom * factor, 1), CLOSEST);
    const { width, height } = this.#whole;
    this.#x += fx * width * (1 / this.zoom - 1 / next);
    this.#y += fy * height * (1 / this.zoom - 1 / next);
    this.zoom = next;
    this.host.requestUpdate();
  }

  fit(): void {
    this.zoom = 1;
    this.host.requestUpdate();
  }

  /** Brings a point of the drawing into sight. */
  show(x: number, y: number): void {
    const { left, top, width, height } = this.#whole;
    const [w, h] = [width / this.zoom, height / this.zoom];
    const [u, v] = [x - left, y - top];
    const near = 0.12;
    if (u < this.#x + near * w || u > this.#x + (1 - near) * w) this.#x = u - w / 2;
    if (v < this.#y + near * h || v > this.#y + (1 - near) * h) this.#y = v - h / 2;
    this.host.requestUpdate();
  }

  /** Whether the pointer that has just been lifted had dragged. */
  get dragged(): boolean {
    return this.#moved > CLICK;
  }

  readonly wheel = (e: WheelEvent): void => {
    // On a page that scrolls, the wheel is the page's; with Ctrl (or two fingers on a pad) it is ours.
    const scrolls = document.documentElement.scrollHeight > innerHeight + 1;
    if (scrolls && !e.ctrlKey && !e.metaKey) return;
    e.preventDefault();
    const box = (e.currentTarget as Element).getBoundingClientRect();
    const factor = Math.exp(-e.deltaY * (e.ctrlKey ? 0.01 : 0.0015));
    this.by(factor, (e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height);
  };

  readonly down = (e: PointerEvent): void => {
    if (this.#pointers.size === 0) this.#moved = 0;
    this.#pointers.set(e.pointerId, { x: e.clientX, y: e.clientY });
  };

  readonly move = (e: PointerEvent): void => {
    const former = this.#pointers.get(e.pointerId);
    if (former === undefined) return;
    const frame = e.currentTarget as Element;
    const box = frame.getBoundingClientRect();
    const [other] = [...this.#pointers].filter(([id]) => id !== e.pointerId).map(([, p]) => p);
    const [dx, dy] = [e.clientX - former.x, e.clientY - former.y];
    this.#moved += Math.hypot(dx, dy);
    this.#pointers.set(e.pointerId, { x: e.clientX, y: e.clientY });
    if (this.#moved <= CLICK) return;
    frame.setPointerCapture(e.pointerId);
    const share = other === undefined ? 1 : 0.5;
    this.#x -= (share * dx * this.#whole.width) / this.zoom / box.width;
    this.#y -= (share * dy * this.#whole.height) / this.zoom / box.height;
    if (other === undefined) {
      this.host.requestUpdate();
      return;
    }
    const was = Math.hypot(former.x - other.x, former.y - other.y);
    const is = Math.hypot(e.clientX - other.x, e.clientY - other.y);
    const [mx, my] = [(e.clientX + other.x) / 2, (e.clientY + other.y) / 2];
    this.by(is / Math.max(was, 1), (mx - box.left) / box.width, (my - box.top) / box.height);
  };

  readonly up = (e: PointerEvent): void => {
    this.#pointers.delete(e.pointerId);
  };
}
