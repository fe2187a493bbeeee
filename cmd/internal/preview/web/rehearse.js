// The rehearsal.

export class Rehearsal {
  take() {}
  clear() {}
  deg() { return undefined; }
}
