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
// nearest to it, as while the playhead is dragged. Where time does not run evenly over
// a page, its spans lie beside one another: the one that the point is in counts.
export function timeAt(page, x, y, loose = false) {
  const mx = (page.origin_mm ?? 0) + x * page.width_mm;
  const my = y * page.height_mm;
  const off = (v, from, to) => Math.max(from - v, v - to, 0);
  let best = null;
  for (const s of page.spans) {
    const aside = off(mx, s.left_mm, s.right_mm), above = off(my, s.top_mm, s.bottom_mm);
    if (!loose && (aside > reach || above > 0)) continue;
    if (!best || above < best.above || above === best.above && aside < best.aside) best = { s, aside, above };
  }
  if (!best) return null;
  const { s } = best;
  const held = Math.min(Math.max(mx, s.left_mm), s.right_mm);
  return s.from_s + ((held - s.left_mm) / (s.right_mm - s.left_mm)) * (s.to_s - s.from_s);
}
