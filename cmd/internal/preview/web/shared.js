// What the modules of the page share: the one playhead, the token that writes
// need, and the table of keys.

import { Player } from "./player.js";

export { make } from "./make.js";

// player is the playhead of the shot on show. page.js loads it with each shot;
// the score and the stage follow its events "time" and "state".
export const player = new Player();

let token = document.querySelector('meta[name="token"]').content;

// setToken takes the token of a program that was started anew.
export function setToken(fresh) { token = fresh; }

// post sends JSON to the program and returns its answer, or throws an error
// that says why there is none.
export async function post(path, value) {
  const answer = await fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-Pullscore-Token": token },
    body: JSON.stringify(value),
  });
  if (!answer.ok) throw new Error((await answer.text()).trim());
  return answer.json();
}

// get asks for JSON.
export async function get(path, params) {
  const answer = await fetch(`${path}?${new URLSearchParams(params)}`);
  if (!answer.ok) throw new Error((await answer.text()).trim());
  return answer.json();
}

// say has a sentence read out to those who do not see the page.
export function say(text) {
  document.getElementById("live").textContent = text;
}
