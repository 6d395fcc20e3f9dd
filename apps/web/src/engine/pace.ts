/** How long words stand before they may change again under a hand, ms: faster than this nobody reads them. */
const breath = 100;

/** What waits: a time to pass, a moment in which nothing else is to be done. */
export interface Clock {
  readonly now: () => number;
  readonly after: (ms: number, act: () => void) => void;
  readonly idle: (act: () => void) => void;
}

const browserClock: Clock = {
  now: () => performance.now(),
  after: (ms, act) => void setTimeout(act, ms),
  // Behind the next painted frame, and not in the way of the one after it.
  idle: (act) =>
    void requestAnimationFrame(() => {
      if ('requestIdleCallback' in window) requestIdleCallback(act, { timeout: breath });
      else setTimeout(act, 4);
    }),
};

/**
 * The pace of words and small drawings beside what a hand pulls: while it pulls they follow ten times a second, when a
 * frame has been painted and nothing else is to be done, so that the pulled thing itself is never kept waiting. When it lets go they follow at once.
 */
export class Pace {
  private last = -Infinity;
  private waiting = false;

  constructor(
    private readonly follow: () => void,
    private readonly clock: Clock = browserClock,
  ) {}

  /** Something changed. */
  changed(pulling: boolean): void {
    if (!pulling) {
      this.done();
      return;
    }
    if (this.waiting) return;
    this.waiting = true;
    const rest = Math.max(0, this.last + breath - this.clock.now());
    const act = () => this.clock.idle(() => this.waiting && this.done());
    if (rest === 0) act();
    else this.clock.after(rest, act);
  }

  private done(): void {
    this.waiting = false;
    this.last = this.clock.now();
    this.follow();
  }
}
