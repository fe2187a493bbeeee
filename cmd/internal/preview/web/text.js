// Text as it may stand on the page.

// plain makes controls that would impose a writing direction (Unicode Standard
// Annex 9) visible, so that no name turns the order of what is beside it.
export function plain(text) {
  return String(text).replace(/[\u202a-\u202e\u2066-\u2069]/g, "\ufffd");
}

// shorten cuts a text behind as many letters as fit, and says so with an
// ellipsis; fits tells whether a text does. A letter keeps its marks.
export function shorten(text, fits) {
  if (fits(text)) return text;
  const letters = [...new Intl.Segmenter(undefined, { granularity: "grapheme" }).segment(text)].map((s) => s.segment);
  let low = 0, high = letters.length - 1;
  while (low < high) {
    const mid = Math.ceil((low + high) / 2);
    if (fits(`${letters.slice(0, mid).join("")}…`)) low = mid;
    else high = mid - 1;
  }
  return `${letters.slice(0, low).join("")}…`;
}
