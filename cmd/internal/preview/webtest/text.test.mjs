// Text as it may stand on the page.

import assert from "node:assert/strict";
import test from "node:test";
import { plain, shorten } from "../web/text.js";

test("marks that turn the order of text are seen, and all else stays", () => {
  assert.equal(plain("a\u202eb\u2066c\u2069"), "a\ufffdb\ufffdc\ufffd");
  for (const text of ["NADIA", "שרה", "花子", "a\u200fb", "<b>&amp;", ""]) assert.equal(plain(text), text);
  assert.equal(plain(12), "12");
});

test("a text is cut behind the last letter that fits, with its marks", () => {
  const upTo = (n) => (text) => [...text].length <= n;
  assert.equal(shorten("kettle", upTo(6)), "kettle");
  assert.equal(shorten("kettles", upTo(6)), "kettl…");
  assert.equal(shorten("e\u0301".repeat(9), upTo(6)), "e\u0301e\u0301…");
  assert.equal(shorten("x".repeat(300), upTo(0)), "…");
  assert.equal(shorten("", upTo(3)), "");
});
