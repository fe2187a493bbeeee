// A picture out of focus: each point spread over a disc of even light, as a lens
// with a round opening spreads it. The sum is exact along a row (running sums,
// cut at fractions of a pixel) and by the pixel across rows.
//
// How far a picture is spread is told here by its variance along an axis, square
// pixels: it adds up, so that what a coarse grid spreads can be taken off. A disc
// of radius r has r^2/4. A disc hardly larger than a pixel has no shape that could
// be seen; nine weights with the right variance do for it, where a sum by the
// pixel would spread it too far or not at all.

// smallest is the variance of the smallest disc that is spread as a disc.
const smallest = 1.5 ** 2 / 4;

// varianceOf returns the variance of a disc of radius r.
export function varianceOf(r) { return (r * r) / 4; }

// blurBy spreads an ImageData so far, in place.
export function blurBy(image, variance) {
  if (!(variance > 0)) return image;
  if (variance < smallest) return soften(image, variance);
  return blurImage(image, 2 * Math.sqrt(variance - 1 / 12)); // rows and ends cut at pixels add 1/12
}

// soften spreads an ImageData by less than a pixel, in place: along each axis the
// weights are v/2, 1-v and v/2, whose variance is v. Most of a picture is even
// and stays as it is. The outermost points are left alone.
export function soften(image, v) {
  const { width, height } = image;
  const points = new Uint32Array(image.data.buffer, image.data.byteOffset, width * height);
  const from = points.slice();
  const side = v / 2, mid = 1 - v;
  const corner = side * side, edge = side * mid, centre = mid * mid;
  const steps = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
  const weights = [corner, edge, corner, edge, edge, corner, edge, corner];
  for (let y = 1; y < height - 1; y++) {
    for (let i = y * width + 1, end = i + width - 2; i < end; i++) {
      const p = from[i];
      if (p === from[i - 1] && p === from[i + 1] && p === from[i - width] && p === from[i + width] &&
        p === from[i - width - 1] && p === from[i - width + 1] && p === from[i + width - 1] && p === from[i + width + 1]) continue;
      let weight = centre * (p >>> 24); // of the colour: as much as it covers
      let a = weight, b = weight * (p & 255), g = weight * ((p >>> 8) & 255), r = weight * ((p >>> 16) & 255);
      for (let n = 0; n < 8; n++) {
        const q = from[i + steps[n]];
        weight = weights[n] * (q >>> 24);
        a += weight;
        b += weight * (q & 255);
        g += weight * ((q >>> 8) & 255);
        r += weight * ((q >>> 16) & 255);
      }
      points[i] = a > 0 ? (((a + 0.5) << 24) | ((r / a + 0.5) << 16) | ((g / a + 0.5) << 8) | (b / a + 0.5)) >>> 0 : 0;
    }
  }
  return image;
}

// chords returns for rows 0, 1, ... from the middle of a disc of radius r the
// half-length of the row's chord, the mean over the height of the row, so that
// their sum has the area of the disc.
export function chords(r) {
  const part = (y) => { // area under the circle from 0 to y
    const t = Math.min(y, r);
    return (t * Math.sqrt(Math.max(r * r - t * t, 0)) + r * r * Math.asin(Math.min(t / r, 1))) / 2;
  };
  const rows = [2 * part(0.5)];
  for (let k = 1; k - 0.5 < r; k++) rows.push(part(k + 0.5) - part(k - 0.5));
  return rows;
}

// spread spreads a picture over discs of radius r pixels. data holds width x
// height points of red, green, blue and opacity, colours already multiplied by
// opacity, which this returns too. What lies outside counts as clear.
export function spread(data, width, height, r) {
  const rows = chords(r);
  const area = 2 * rows.reduce((sum, h, k) => sum + (k ? 2 * h : h), 0);
  const reach = Math.ceil(rows[0]) + 1;
  const sums = new Float64Array((width + 2 * reach + 2) * 4);
  const out = new Float32Array(data.length);
  for (let y = 0; y < height; y++) {
    if (!sumRow(data, y * width * 4, width, reach, sums)) continue;
    for (let k = 0; k < rows.length; k++) {
      const up = y - k >= 0 ? (y - k) * width * 4 : -1;
      const down = k > 0 && y + k < height ? (y + k) * width * 4 : -1;
      if (up >= 0 || down >= 0) chordRow(sums, width, reach, rows[k], area, out, up, down);
    }
  }
  return out;
}

// sumRow fills sums: entry i holds the sum of the points before i - reach. It
// reports whether the row has anything in it.
function sumRow(data, from, width, reach, sums) {
  const start = reach * 4;
  sums.fill(0, 0, start + 4);
  let any = 0;
  for (let i = 0; i < width * 4; i++) {
    sums[start + 4 + i] = sums[start + i] + data[from + i];
    any += data[from + i];
  }
  for (let i = start + 4 + width * 4; i < sums.length; i++) sums[i] = sums[i - 4];
  return any > 0;
}

// chordRow adds to the rows of out that begin at up and at down, for every point,
// the light of the chord round it; a row below 0 is none. A chord from x+1/2-half
// to x+1/2+half ends within points, so the sums are taken between entries.
function chordRow(sums, width, reach, half, area, out, up, down) {
  const low = reach + 0.5 - half;
  const high = reach + 0.5 + half;
  const i = Math.floor(low), f = (low - i) / area, e = (1 - low + i) / area;
  const j = Math.floor(high), g = (high - j) / area, h = (1 - high + j) / area;
  let a = (i * 4) | 0, b = (j * 4) | 0;
  if (up >= 0 && down >= 0) {
    for (let n = 0; n < width * 4; n++, a++, b++) {
      const light = sums[b] * h + sums[b + 4] * g - sums[a] * e - sums[a + 4] * f;
      out[up + n] += light;
      out[down + n] += light;
    }
    return;
  }
  const one = Math.max(up, down);
  for (let n = 0; n < width * 4; n++, a++, b++) out[one + n] += sums[b] * h + sums[b + 4] * g - sums[a] * e - sums[a + 4] * f;
}

// blurImage spreads an ImageData over discs of radius r pixels, in place.
export function blurImage(image, r) {
  const { data, width, height } = image;
  const points = new Float32Array(data.length);
  for (let i = 0; i < data.length; i += 4) {
    const a = data[i + 3] / 255;
    points[i] = data[i] * a;
    points[i + 1] = data[i + 1] * a;
    points[i + 2] = data[i + 2] * a;
    points[i + 3] = data[i + 3];
  }
  const out = spread(points, width, height, r);
  for (let i = 0; i < data.length; i += 4) {
    const a = out[i + 3] / 255;
    const by = a > 0 ? 1 / a : 0;
    data[i] = out[i] * by;
    data[i + 1] = out[i + 1] * by;
    data[i + 2] = out[i + 2] * by;
    data[i + 3] = out[i + 3] + 0.5;
  }
  return image;
}
