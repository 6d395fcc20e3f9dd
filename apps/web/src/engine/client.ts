import type { Answers, Asks, Frame, Reply, Request, Verb } from './protocol.js';

/** The engine refused: its sentence is for the person. */
export class EngineRefused extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

/** The engine in its worker. Pulls are sent one at a time: while one is computed, only the newest waits. */
export class EngineClient {
  private readonly worker: Worker;
  private readonly waiting = new Map<number, Waiting>();
  private seq = 0;
  private pulling = false;
  private next: { values: Record<string, number>; end: boolean } | undefined;

  constructor(private readonly onFrame: (frame: Frame) => void) {
    this.worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'engine' });
    this.worker.onmessage = ({ data }: MessageEvent<Reply>) => this.receive(data);
    this.worker.onerror = () => {
      for (const { reject } of this.waiting.values())
        reject(new EngineRefused('ENGINE_STOPPED', 'The engine stopped. Load the page again; what was saved is kept.'));
      this.waiting.clear();
    };
  }

  ask<V extends Verb>(verb: V, ask: Asks[V]): Promise<Answers[V]> {
    const seq = ++this.seq;
    const request: Request<V> = { seq, verb, ask };
    this.worker.postMessage(request);
    return new Promise((resolve, reject) => this.waiting.set(seq, { resolve, reject }));
  }

  /** Pulls numbers; the frame comes by `onFrame`. */
  pull(values: Readonly<Record<string, number>>, end: boolean): void {
    if (this.pulling) {
      this.next = { values: { ...this.next?.values, ...values }, end: end || (this.next?.end ?? false) };
      return;
    }
    this.pulling = true;
    void this.ask('set', { values, end }).then(
      (frame) => this.pulled(frame),
      () => this.pulled(undefined),
    );
  }

  /** Undo, redo, back to the truth. */
  step(verb: 'undo' | 'redo' | 'truth'): void {
    void this.ask(verb, {}).then(this.onFrame);
  }

  private pulled(frame: Frame | undefined): void {
    this.pulling = false;
    if (frame) this.onFrame(frame);
    const { next } = this;
    if (!next) return;
    this.next = undefined;
    this.pull(next.values, next.end);
  }

  private receive(reply: Reply): void {
    const waiting = this.waiting.get(reply.seq);
    if (!waiting) return;
    this.waiting.delete(reply.seq);
    if ('refused' in reply) waiting.reject(new EngineRefused(reply.refused.code, reply.refused.message));
    else waiting.resolve(reply.answer as never);
  }
}
