import { useCallback, useSyncExternalStore } from 'react';

/** How many times faster than the line. */
export const paces = [1, 10, 60, 240] as const;

/** ms between steps where less motion is asked for. */
const calmStep = 1000;

/** Where the cut stands on its way along the line, and its journey there: moved by hand, by keys, or at a pace once play is pressed. */
export class Cut {
  /** Minutes since the start of the way. */
  minute: number;
  playing = false;
  pace: number = 60;
  /** On the clock of the ribbon: where the way begins; and how long it is. Nothing is drawn before these are known. */
  from = 0;
  length = 0;
  /** Stretches of the ribbon that are opened below it. */
  opened: readonly (readonly [from: number, to: number])[] = [];
  /** What was asked for beyond the end of the way. */
  beyond: number | undefined;
  private readonly listeners = new Set<() => void>();
  private version = 0;
  private stop: (() => void) | undefined;

  constructor(asked: number | undefined) {
    this.minute = asked ?? 0;
  }

  subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  snapshot = (): number => this.version;

  /** The way as the line is now; a cut beyond its end stands at the end, and says so. */
  along(opened: readonly (readonly [from: number, to: number])[]): void {
    const [first, last] = [opened[0], opened.at(-1)];
    if (!first || !last) return;
    this.opened = opened;
    this.from = first[0];
    this.length = last[1] - first[0];
    const { length } = this;
    if (this.minute > length) {
      this.beyond = this.minute;
      this.minute = length;
    }
    this.changed();
  }

  moveTo(minute: number): void {
    this.beyond = undefined;
    this.minute = Math.min(this.length, Math.max(0, minute));
    this.changed();
  }

  setPace(pace: number): void {
    this.pace = pace;
    this.changed();
  }

  play(): void {
    if (this.playing || this.length === 0) return;
    this.beyond = undefined;
    if (this.minute >= this.length) this.minute = 0;
    this.playing = true;
    this.stop = window.matchMedia('(prefers-reduced-motion: reduce)').matches ? this.inSteps() : this.everyFrame();
    this.changed();
  }

  pause(): void {
    this.stop?.();
    this.stop = undefined;
    if (!this.playing) return;
    this.playing = false;
    this.changed();
  }

  toggle(): void {
    if (this.playing) this.pause();
    else this.play();
  }

  private everyFrame(): () => void {
    let last: number | undefined;
    let frame = 0;
    const step = (now: number): void => {
      // A tab that was away does not leap.
      const passed = last === undefined ? 0 : Math.min(100, now - last);
      last = now;
      frame = requestAnimationFrame(step);
      this.onward(passed);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }

  private inSteps(): () => void {
    const timer = setInterval(() => this.onward(calmStep), calmStep);
    return () => clearInterval(timer);
  }

  private onward(ms: number): void {
    this.minute = Math.min(this.length, this.minute + (ms / 60_000) * this.pace);
    if (this.minute >= this.length) this.pause();
    else this.changed();
  }

  private changed(): void {
    this.version += 1;
    for (const listener of this.listeners) listener();
  }
}

/** Follows the cut: drawn anew whenever it moves. */
export function useCut(cut: Cut): void {
  useSyncExternalStore(
    cut.subscribe,
    useCallback(() => cut.snapshot(), [cut]),
  );
}
