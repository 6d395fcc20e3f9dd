/** Keeps the latest results of a pure function, so that what a drag does not touch is not drawn again. Oldest goes first. */
export class Kept<Value> {
  private readonly store = new Map<string, Value>();
  constructor(private readonly limit: number) {}

  get(key: string, make: () => Value): Value {
    const found = this.store.get(key);
    if (found !== undefined) {
      this.store.delete(key);
      this.store.set(key, found);
      return found;
    }
    const made = make();
    this.store.set(key, made);
    if (this.store.size > this.limit) {
      const oldest = this.store.keys().next();
      if (oldest.done !== true) this.store.delete(oldest.value);
    }
    return made;
  }
}
