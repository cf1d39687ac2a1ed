/* Counts a pulse: a start cue, a calm countdown, "how many beats?"; or taps along. Without script one counts by a clock. */
(function () {
	"use strict";

	const guide = document.getElementById("count-guide");
	const say = document.getElementById("count-say");
	const counted = document.getElementById("counted");
	const method = document.getElementById("method");
	const rhr = document.getElementById("rhr");
	const file = document.getElementById("rr-file");
	const rr = document.getElementById("rr");

	if (file && rr) {
		file.parentElement.hidden = false;
		file.addEventListener("change", function () {
			const chosen = file.files[0];
			if (chosen) {
				chosen.slice(0, 200000).text().then(function (text) {
					rr.value = text.trim();
					rr.focus();
				});
			}
		});
	}
	if (!guide || !say || !counted || !method || !rhr) {
		return;
	}
	const tap = document.getElementById("count-tap");
	const stop = document.getElementById("count-stop");
	const starters = Array.from(guide.querySelectorAll("[data-seconds]"));
	const least = 20;
	const cue = 3;
	let timer = null;
	let taps = [];

	function text(name, value) {
		return guide.dataset[name].replace("{0}", value);
	}

	function shake(pattern) {
		if (navigator.vibrate) {
			navigator.vibrate(pattern);
		}
	}

	function running(yes) {
		starters.forEach((one) => { one.hidden = yes; });
		tap.hidden = yes;
		stop.hidden = !yes;
	}

	function end() {
		clearInterval(timer);
		timer = null;
		running(false);
	}

	function ask(seconds) {
		end();
		method.value = seconds === 30 ? "COUNT_30" : "COUNT_60";
		rhr.value = "";
		say.textContent = text("ask", seconds);
		counted.value = "";
		counted.focus();
	}

	/* By the clock, not by the number of ticks: a phone that dozes must not make the minute longer. */
	function count(seconds) {
		const begin = Date.now() + cue * 1000;
		let announced = null;
		running(true);
		timer = setInterval(function () {
			const left = begin - Date.now();
			const rest = Math.ceil((begin + seconds * 1000 - Date.now()) / 1000);
			if (left > 0) {
				say.textContent = text("ready", Math.ceil(left / 1000));
				return;
			}
			if (announced === null) {
				announced = seconds;
				shake(200);
			}
			if (rest <= 0) {
				shake([200, 100, 200]);
				ask(seconds);
				return;
			}
			say.textContent = text("counting", rest);
		}, 100);
	}

	function tapped() {
		taps.push(Date.now());
		if (taps.length > 1 && taps[taps.length - 1] - taps[taps.length - 2] > 3000) {
			taps = taps.slice(-1);
		}
		if (taps.length <= least) {
			say.textContent = text("tapping", least + 1 - taps.length);
			return;
		}
		const all = taps[taps.length - 1] - taps[0];
		const bpm = Math.round(60000 * (taps.length - 1) / all);
		taps = [];
		shake([200, 100, 200]);
		method.value = "TAP";
		counted.value = "";
		rhr.value = String(bpm);
		say.textContent = text("tapped", bpm);
	}

	guide.hidden = false;
	starters.forEach(function (one) {
		one.addEventListener("click", () => count(Number(one.dataset.seconds)));
	});
	stop.addEventListener("click", function () {
		end();
		say.textContent = "";
	});
	tap.addEventListener("pointerdown", tapped);
	tap.addEventListener("keydown", function (event) {
		if ((event.key === " " || event.key === "Enter") && !event.repeat) {
			event.preventDefault();
			tapped();
		}
	});
	tap.addEventListener("click", (event) => event.preventDefault());
})();
