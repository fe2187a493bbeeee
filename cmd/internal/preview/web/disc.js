// A picture out of focus: each point spread over a disc of even light, as a lens
// with a round opening spreads it. The sum is exact along a row (running sums,
// cut at fractions of a pixel) and by the pixel across rows.

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
  const i = Math.floor(low), f = low - i;
  const j = Math.floor(high), g = high - j;
  const both = up >= 0 && down >= 0;
  const one = Math.max(up, down);
  for (let n = 0, a = i * 4, b = j * 4; n < width * 4; n++, a++, b++) {
    const light = (sums[b] + (sums[b + 4] - sums[b]) * g - sums[a] - (sums[a + 4] - sums[a]) * f) / area;
    out[one + n] += light;
    if (both) out[up + n] += light;
  }
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
