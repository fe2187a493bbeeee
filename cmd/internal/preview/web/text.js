// Text as it may stand on the page.

// plain makes controls that would impose a writing direction (Unicode Standard
// Annex 9) visible, so that no name turns the order of what is beside it.
export function plain(text) {
  return String(text).replace(/[\u202a-\u202e\u2066-\u2069]/g, "\ufffd");
}
