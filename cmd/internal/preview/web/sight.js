// Where a camera that turns sees the floor, the horizon and what is far away.
//
// The floor is that of the shot: metres, x to the right, y the way the lens looks at the
// start, z up from its height then; of a camera that has a place in a scene, that of the
// scene: x to the right, y upstage, z up from its zero point. A camera is { x, y, z, pan, tilt, pupil }: its sensor
// mark, degrees to the right and up, and how far ahead of the mark it sees from. Points of
// the picture are parts of the frame's width, from its middle, up and to the right
// positive; tangent is how large the tangent of an angle off the axis is there.

const radians = Math.PI / 180;

// The floor is drawn so many metres round the camera, with a line each metre, cut into
// pieces of that length, which fade in so many steps.
const reach = 16;
const piece = 2;
export const shades = 6;

// Nearer than this, metres, nothing of the floor is drawn.
const nearest = 0.1;

// turner returns a function that has a direction of the floor as the camera has it: along
// its axis, to the right of it and above. It is made once for all that a picture holds.
export function turner({ pan, tilt }) {
  const sp = Math.sin(pan * radians), cp = Math.cos(pan * radians);
  const st = Math.sin(tilt * radians), ct = Math.cos(tilt * radians);
  return (x, y, z) => {
    const level = x * sp + y * cp;
    return { along: level * ct + z * st, across: x * cp - y * sp, above: z * ct - level * st };
  };
}

// horizon returns how high in the picture a camera has the horizon.
export function horizon({ tilt }, tangent) {
  return -Math.tan(Math.max(-89, Math.min(89, tilt)) * radians) * tangent;
}

// farAway returns where a camera has a point so far away that only its direction counts:
// x to the right and z up for each metre forth; null where that is not before it. around
// turns the direction about the camera, in degrees to the right.
export function farAway(x, z, around, camera, tangent) {
  const s = Math.sin(around * radians), c = Math.cos(around * radians);
  const v = turner(camera)(x * c + s, c - x * s, z);
  return v.along > 0.02 ? { x: (v.across / v.along) * tangent, y: (v.above / v.along) * tangent } : null;
}

// floorLines returns the lines of a floor that lies so many metres below z 0, as below the
// lens at the start: pieces { x1, y1, x2, y2, shade }, shade from 0 for the nearest to shades - 1.
export function floorLines(camera, below, tangent) {
  const lines = [];
  const turn = turner(camera);
  const seen = (x, y) => {
    const v = turn(x - camera.x, y - camera.y, -below - camera.z);
    v.along -= camera.pupil;
    return v;
  };
  const add = (fromX, fromY, toX, toY) => {
    const x = (fromX + toX) / 2 - camera.x, y = (fromY + toY) / 2 - camera.y;
    const away = Math.sqrt(x * x + y * y); // hypot is slower
    if (away > reach) return;
    const l = line(seen(fromX, fromY), seen(toX, toY), tangent);
    if (l) lines.push(Object.assign(l, { shade: Math.min(Math.floor((away / reach) * shades), shades - 1) }));
  };
  const midX = Math.round(camera.x), midY = Math.round(camera.y);
  for (let n = -reach; n <= reach; n++) {
    for (let m = -reach; m < reach; m += piece) {
      add(midX + n, midY + m, midX + n, midY + m + piece);
      add(midX + m, midY + n, midX + m + piece, midY + n);
    }
  }
  return lines;
}

// line returns a line from one point to another as the picture has it, or null where the
// camera does not see it.
function line(a, b, tangent) {
  if (a.along < nearest && b.along < nearest) return null;
  if (a.along < nearest) a = cut(b, a);
  if (b.along < nearest) b = cut(a, b);
  const by = tangent / a.along, to = tangent / b.along;
  return { x1: a.across * by, y1: a.above * by, x2: b.across * to, y2: b.above * to };
}

// cut returns the point between one that is seen and one that is too near, where the line
// begins to be seen.
function cut(seen, near) {
  const u = (seen.along - nearest) / (seen.along - near.along);
  const mix = (side) => seen[side] + (near[side] - seen[side]) * u;
  return { along: nearest, across: mix("across"), above: mix("above") };
}
