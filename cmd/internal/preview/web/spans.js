// Where time lies on the pages of a score, and the other way. Pages are as the
// program tells them: sizes and spans in millimetres. What is seen of a drawing starts
// origin_mm from its left edge.

// placeOf returns the page that shows a time, from 0, and where on it the
// playhead stands, as shares of the page's width and height; null where no
// page shows time. A time where two pages meet is on the later.
export function placeOf(pages, t) {
  let place = null;
  pages.forEach((page, index) => { // those that have not come yet are skipped
    for (const s of page.spans) {
      if (place && t < s.from_s) continue;
      const held = Math.min(Math.max(t, s.from_s), s.to_s);
      const x = s.left_mm + ((held - s.from_s) / (s.to_s - s.from_s)) * (s.right_mm - s.left_mm);
      place = { page: index, x: (x - (page.origin_mm ?? 0)) / page.width_mm, top: s.top_mm / page.height_mm, bottom: s.bottom_mm / page.height_mm };
    }
  });
  return place;
}

// reach is how far beside its span a time may be pointed at, in millimetres.
const reach = 3;

// timeAt returns the time at a point of a page, given as shares of its width
// and height, or null where there is none. With loose, any point has the time
// above or below it, as while the playhead is dragged.
export function timeAt(page, x, y, loose = false) {
  const mx = (page.origin_mm ?? 0) + x * page.width_mm;
  const my = y * page.height_mm;
  for (const s of page.spans) {
    const inside = mx >= s.left_mm - reach && mx <= s.right_mm + reach && my >= s.top_mm && my <= s.bottom_mm;
    if (!inside && !loose) continue;
    const held = Math.min(Math.max(mx, s.left_mm), s.right_mm);
    return s.from_s + ((held - s.left_mm) / (s.right_mm - s.left_mm)) * (s.to_s - s.from_s);
  }
  return null;
}
