// Changing a drawing into a newer one: what is the same in both stays, so that
// a browser lays out and paints only what is new.

// morph makes an element like another, which is used up.
export function morph(old, fresh) {
  for (const { name } of [...old.attributes]) if (!fresh.hasAttribute(name)) old.removeAttribute(name);
  for (const { name, value } of fresh.attributes) if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  const now = [...old.childNodes];
  const next = [...fresh.childNodes];
  next.forEach((node, i) => {
    const was = now[i];
    if (!was) old.append(node);
    else if (was.isEqualNode(node)) return;
    else if (was.nodeName === "g" && node.nodeName === "g") morph(was, node);
    else was.replaceWith(node);
  });
  for (const node of now.slice(next.length)) node.remove();
}
