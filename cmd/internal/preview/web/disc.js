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
  const row = new Float32Array(width * 4);
  for (let y = 0; y < height; y++) {
    if (!sumRow(data, y * width * 4, width, reach, sums)) continue;
    for (let k = 0; k < rows.length; k++) {
      const up = y - k >= 0;
      const down = k > 0 && y + k < height;
      if (!up && !down) continue;
      chordRow(sums, width, reach, rows[k], area, row);
      if (up) add(out, (y - k) * width * 4, row);
      if (down) add(out, (y + k) * width * 4, row);
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

// chordRow puts into row, for every point, the light of the chord round it. A
// chord from x+1/2-half to x+1/2+half ends within points, so the sums are taken
// between entries.
function chordRow(sums, width, reach, half, area, row) {
  const low = reach + 0.5 - half;
  const high = reach + 0.5 + half;
  const i = Math.floor(low), f = low - i;
  const j = Math.floor(high), g = high - j;
  for (let n = 0; n < width * 4; n++) {
    const a = n + i * 4, b = n + j * 4;
    row[n] = (sums[b] + (sums[b + 4] - sums[b]) * g - sums[a] - (sums[a + 4] - sums[a]) * f) / area;
  }
}

function add(out, at, row) {
  for (let n = 0; n < row.length; n++) out[at + n] += row[n];
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
