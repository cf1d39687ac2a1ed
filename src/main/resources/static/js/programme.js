/* The week's form: sessions are moved by dragging one onto another, or by two buttons. Without script the day is chosen. */
(function () {
	"use strict";

	const list = document.querySelector(".week-form");
	if (!list) {
		return;
	}
	let dragged = null;

	function day(row) {
		return row.querySelector(".session-day");
	}

	function sort() {
		const active = document.activeElement;
		Array.from(list.children)
			.sort((one, other) => Number(day(one).value) - Number(day(other).value))
			.forEach((row) => list.append(row));
		if (active && list.contains(active)) {
			active.focus();
		}
	}

	function move(row, by) {
		const chosen = day(row);
		const next = Math.min(7, Math.max(1, Number(chosen.value) + by));
		chosen.value = String(next);
		sort();
	}

	list.querySelectorAll(".session-row").forEach((row) => {
		row.querySelector(".session-move").hidden = false;
		row.querySelector(".move-earlier").addEventListener("click", () => move(row, -1));
		row.querySelector(".move-later").addEventListener("click", () => move(row, 1));
		row.addEventListener("dragstart", (event) => {
			if (event.target !== row) {
				return;
			}
			dragged = row;
			event.dataTransfer.effectAllowed = "move";
		});
		row.addEventListener("dragover", (event) => {
			if (dragged && dragged !== row) {
				event.preventDefault();
				row.classList.add("drop-here");
			}
		});
		row.addEventListener("dragleave", () => row.classList.remove("drop-here"));
		row.addEventListener("drop", (event) => {
			event.preventDefault();
			row.classList.remove("drop-here");
			if (dragged && dragged !== row) {
				day(dragged).value = day(row).value;
				sort();
			}
		});
		row.addEventListener("dragend", () => {
			dragged = null;
		});
	});
})();
