// The link to the program: states as they come, and coming back by itself when
// the program or the network was away.

// backoff returns how long to wait before the nth try, in milliseconds.
export function backoff(n) { return Math.min(250 * 2 ** n, 4000); }

// A Link hands every new state to take, pages that come before it to keep, what somebody
// points at in an editor to point, and
// tells with changed whether it is "live", "waiting", "resting" (nobody looks) or
// "refused": the program wants another token, and asking again would not help.
export class Link {
  constructor({ take, keep, point, changed }) {
    Object.assign(this, { take, keep, point, changed, tries: 0, last: "", query: "" });
    document.addEventListener("visibilitychange", () => this.look());
    this.look();
  }

  // look opens the stream while the page is seen: browsers allow few streams
  // to one address, and pages that nobody sees must not use them up.
  look() {
    if (document.visibilityState === "hidden") {
      this.close();
      this.changed("resting");
    } else if (!this.source) {
      this.open();
    }
  }

  // follow has the page of a score that is in sight come with every state; what says which.
  follow(what) {
    const query = `?${new URLSearchParams(what)}`;
    if (query === this.query) return;
    this.query = query;
    if (this.source) this.open();
  }

  close() {
    clearTimeout(this.timer);
    this.source?.close();
    this.source = null;
  }

  open() {
    this.close();
    const source = new EventSource(`events${this.query}`);
    this.source = source;
    source.onopen = () => {
      this.tries = 0;
      this.changed("live");
    };
    source.onmessage = (event) => {
      if (event.lastEventId === this.last) return;
      this.last = event.lastEventId;
      this.take(JSON.parse(event.data));
    };
    source.addEventListener("sheet", (event) => this.keep(JSON.parse(event.data)));
    source.addEventListener("point", (event) => this.point(JSON.parse(event.data)));
    source.onerror = () => {
      this.changed("waiting");
      if (source.readyState !== EventSource.CLOSED || this.source !== source) return; // it tries by itself
      this.retry(source);
    };
  }

  // retry opens the stream anew after a while. A stream does not tell why it was
  // turned away, so that is asked for apart.
  async retry(source) {
    const wait = backoff(this.tries++);
    const refused = await this.refused();
    if (this.source !== source) return;
    if (refused) this.changed("refused");
    else this.timer = setTimeout(() => this.open(), wait);
  }

  // refused reports whether the program turns this page away.
  async refused() {
    try {
      return (await fetch("api/state")).status === 403;
    } catch {
      return false; // it cannot be reached at all
    }
  }
}
