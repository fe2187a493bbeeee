/* The log of takes: keeps what is filled in, and makes the CSV file that takes reads.
   Takes are rows of texts by column. They stay in this browser, under the title of the
   document, until somebody clears them. */
(function () {
	"use strict";
	const columns = ["plan", "shot", "pull", "take", "landed", "time_s", "hit", "result", "puller", "date", "note"];
	const all = document.querySelector(".log-all");
	const send = document.querySelector(".log-send");
	if (!all || !send) return;
	const place = "log of takes: " + document.title;
	let rows = stored();

	function stored() {
		try {
			const kept = JSON.parse(localStorage.getItem(place) || "[]");
			return Array.isArray(kept) ? kept : [];
		} catch (e) {
			return [];
		}
	}

	function store() {
		try {
			localStorage.setItem(place, JSON.stringify(rows));
		} catch (e) {
			/* a browser that keeps nothing: the takes last as long as the page */
		}
	}

	/* A field of CSV: in quotes where it has to be (RFC 4180). */
	function field(text) {
		return /[",\r\n]/.test(text) ? '"' + text.replace(/"/g, '""') + '"' : text;
	}

	function csv() {
		const lines = [columns.join(",")];
		for (const row of rows) lines.push(columns.map(c => field(String(row[c] || ""))).join(","));
		return lines.join("\n") + "\n";
	}

	function file() {
		return new File([csv()], all.dataset.file, { type: "text/csv" });
	}

	function save() {
		const link = document.createElement("a");
		link.href = URL.createObjectURL(file());
		link.download = all.dataset.file;
		document.body.append(link);
		link.click();
		link.remove();
		setTimeout(() => URL.revokeObjectURL(link.href), 10000);
	}

	async function share() {
		const data = { files: [file()] };
		if (!navigator.canShare || !navigator.canShare(data)) return save();
		try {
			await navigator.share(data);
		} catch (e) {
			if (e.name !== "AbortError") save();
		}
	}

	async function copy() {
		try {
			await navigator.clipboard.writeText(csv());
			say("Copied.");
		} catch (e) {
			save();
		}
	}

	function say(text) {
		send.querySelector(".rows").textContent = text;
	}

	function count() {
		say(rows.length === 0 ? "No takes yet." : rows.length === 1 ? "1 row kept." : rows.length + " rows kept.");
	}

	/* The rows of a shot below its form, each with a button that takes it away. */
	function show(form) {
		const list = form.querySelector(".kept");
		list.replaceChildren();
		rows.forEach((row, i) => {
			if (row.plan !== form.dataset.plan || row.shot !== form.dataset.shot) return;
			const line = document.createElement("p");
			const parts = ["take " + row.take, "pull " + row.pull, row.result, row.landed, row.time_s && row.time_s + " s", row.note];
			line.textContent = parts.filter(Boolean).join(", ") + " ";
			const remove = document.createElement("button");
			remove.type = "button";
			remove.textContent = "Remove";
			remove.setAttribute("aria-label", "Remove take " + row.take + ", pull " + row.pull);
			remove.addEventListener("click", () => {
				rows.splice(i, 1);
				store();
				refresh();
			});
			line.append(remove);
			list.append(line);
		});
	}

	function refresh() {
		document.querySelectorAll("form.log").forEach(show);
		count();
	}

	/* What is wrong with a field, in words; "" for nothing. The same as takes wants it. */
	function fault(name, text) {
		if (text === "") return "";
		if (name === "time_s") return Number(text) > 0 && Number(text) <= 600 ? "" : "Seconds, as in 1.4";
		if (name !== "landed" || /^(inf|∞)$/i.test(text)) return "";
		return /\d\s*(m|cm|mm|ft|feet|in|'|"|′|″|deg|°)/i.test(text) ? "" : "With its unit, as in 1.72 m, 5'6\" or 121 deg";
	}

	/* Reads the fields of a pull into a row; nothing where none is filled in. */
	function read(form, set) {
		const get = name => {
			const input = set.querySelector('[name="' + name + '"]');
			return input ? input.value.trim() : "";
		};
		const chosen = set.querySelector("input[type=radio]:checked");
		const row = {
			plan: form.dataset.plan, shot: form.dataset.shot, pull: set.dataset.pull, take: form.elements.take.value.trim(),
			landed: get("landed").replace("∞", "inf").replace(/′/g, "'").replace(/″/g, '"'), time_s: get("time_s").replace(",", "."),
			hit: chosen ? (chosen.value === "sharp" ? "yes" : "no") : "", result: chosen ? chosen.value : "",
			puller: send.elements.puller.value.trim(), date: send.elements.date.value, note: get("note")
		};
		return chosen || row.landed ? row : null;
	}

	function keep(event) {
		event.preventDefault();
		const form = event.target;
		const found = [];
		for (const set of form.querySelectorAll("fieldset")) {
			const row = read(form, set);
			if (!row) continue;
			for (const name of ["landed", "time_s"]) {
				const input = set.querySelector('[name="' + name + '"]');
				if (!input) continue;
				const lacks = name === "time_s" && row.landed && !row.time_s;
				input.setCustomValidity(lacks ? "A landing counts with its time" : fault(name, row[name]));
				if (!input.reportValidity()) return;
			}
			found.push(row);
		}
		if (found.length === 0) {
			form.querySelector(".kept").textContent = "Nothing is filled in.";
			return;
		}
		rows.push(...found);
		store();
		for (const set of form.querySelectorAll("fieldset")) {
			set.querySelectorAll("input").forEach(input => {
				if (input.type === "radio") input.checked = false;
				else input.value = "";
			});
		}
		const take = parseInt(form.elements.take.value, 10);
		if (!Number.isNaN(take)) form.elements.take.value = String(take + 1);
		refresh();
	}

	/* A tap keeps how a take went at once. The same pull again is the next take. */
	function tap(form, set, word) {
		const of = row => row.plan === form.dataset.plan && row.shot === form.dataset.shot && row.take === form.elements.take.value.trim();
		const take = parseInt(form.elements.take.value, 10);
		if (!Number.isNaN(take) && rows.some(row => of(row) && row.pull === set.dataset.pull)) form.elements.take.value = String(take + 1);
		rows.push({
			plan: form.dataset.plan, shot: form.dataset.shot, pull: set.dataset.pull, take: form.elements.take.value.trim(),
			hit: word === "sharp" ? "yes" : "no", result: word, puller: send.elements.puller.value.trim(), date: send.elements.date.value
		});
		store();
		refresh();
	}

	/* Takes the last row of a shot away again, and goes back to its take. */
	function undo(form) {
		let last = rows.length - 1;
		while (last >= 0 && !(rows[last].plan === form.dataset.plan && rows[last].shot === form.dataset.shot)) last--;
		if (last < 0) return;
		form.elements.take.value = rows[last].take;
		rows.splice(last, 1);
		store();
		refresh();
	}

	document.querySelectorAll(".log-off").forEach(note => note.remove());
	const now = new Date();
	send.elements.date.value = [now.getFullYear(), String(now.getMonth() + 1).padStart(2, "0"), String(now.getDate()).padStart(2, "0")].join("-");
	send.hidden = false;
	send.addEventListener("submit", event => event.preventDefault());
	send.elements.share.addEventListener("click", share);
	send.elements.save.addEventListener("click", save);
	send.elements.copy.addEventListener("click", copy);
	send.elements.clear.addEventListener("click", () => {
		if (rows.length === 0 || !confirm("Clear all takes of this log?")) return;
		rows = [];
		store();
		refresh();
	});
	document.querySelectorAll("form.log").forEach(form => {
		form.hidden = false;
		form.addEventListener("submit", keep);
		form.elements.undo.addEventListener("click", () => undo(form));
		for (const set of form.querySelectorAll("fieldset")) {
			for (const key of set.querySelectorAll("[name=tap]")) key.addEventListener("click", () => tap(form, set, key.value));
		}
		form.addEventListener("input", event => event.target.setCustomValidity && event.target.setCustomValidity(""));
	});
	refresh();
})();
