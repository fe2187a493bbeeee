// The signs of findings, as the score draws them: a flag, full for an error,
// outlined for a warning, thinly for a note; with the number that it has there.

const ns = "http://www.w3.org/2000/svg";

export function sign(severity, number) {
  const svg = document.createElementNS(ns, "svg");
  const text = number ? String(number) : "";
  const width = 12 + 7 * Math.max(0, text.length - 1) + (text ? 4 : 0);
  svg.setAttribute("class", `flag ${severity}`);
  svg.setAttribute("viewBox", `0 0 ${width} 14`);
  svg.setAttribute("width", width);
  svg.setAttribute("height", 14);
  svg.setAttribute("aria-hidden", "true");
  const flag = document.createElementNS(ns, "path");
  flag.setAttribute("d", `M1 1H${width - 1}l-3 6l3 6H1Z`);
  svg.append(flag);
  if (text) {
    const label = document.createElementNS(ns, "text");
    label.setAttribute("x", (width - 3) / 2);
    label.setAttribute("y", 10.6);
    label.textContent = text;
    svg.append(label);
  }
  return svg;
}
