// Text as it may stand on the page.

import assert from "node:assert/strict";
import test from "node:test";
import { plain } from "../web/text.js";

test("marks that turn the order of text are seen, and all else stays", () => {
  assert.equal(plain("a\u202eb\u2066c\u2069"), "a\ufffdb\ufffdc\ufffd");
  for (const text of ["NADIA", "שרה", "花子", "a\u200fb", "<b>&amp;", ""]) assert.equal(plain(text), text);
  assert.equal(plain(12), "12");
});
