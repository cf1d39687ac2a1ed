/* Draws the mornings as ink dots, the normal range as two thin rules, illness and stages hatched behind. */
(function () {
	"use strict";

	const source = document.getElementById("chart-data");
	const canvases = document.querySelectorAll("canvas[data-series]");
	if (!source || canvases.length === 0 || !window.Chart) {
		return;
	}
	const data = JSON.parse(source.textContent);
	const still = window.matchMedia("(prefers-reduced-motion: reduce)");
	const dark = window.matchMedia("(prefers-color-scheme: dark)");
	let charts = [];

	function token(name) {
		return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
	}

	function tile(size, ground, draw) {
		const canvas = document.createElement("canvas");
		canvas.width = size;
		canvas.height = size;
		const pen = canvas.getContext("2d");
		pen.globalAlpha = 0.5;
		pen.fillStyle = ground;
		pen.fillRect(0, 0, size, size);
		pen.globalAlpha = 0.75;
		pen.strokeStyle = token("--rule-strong");
		pen.fillStyle = token("--rule-strong");
		pen.lineWidth = 1;
		draw(pen, size);
		return pen.createPattern(canvas, "repeat");
	}

	function slanted(pen, size) {
		pen.beginPath();
		for (const shift of [-size, 0, size]) {
			pen.moveTo(shift, size);
			pen.lineTo(shift + size, 0);
		}
		pen.stroke();
	}

	function ruled(pen, size) {
		pen.beginPath();
		pen.moveTo(0, size / 2);
		pen.lineTo(size, size / 2);
		pen.stroke();
	}

	function dotted(pen, size) {
		pen.beginPath();
		pen.arc(size / 2, size / 2, 1, 0, 2 * Math.PI);
		pen.fill();
	}

	function plain() {
	}

	function hatches() {
		return {
			ILL: tile(8, token("--rest-ground"), slanted),
			HOLD: tile(4, token("--rest-ground"), slanted),
			STAGE_1: tile(9, token("--easy-ground"), ruled),
			STAGE_2: tile(9, token("--sheet"), dotted),
			STAGE_3: tile(4, token("--sheet"), plain)
		};
	}

	function spans(patterns) {
		const boxes = {};
		data.spans.forEach(function (span, at) {
			boxes["span" + at] = {
				type: "box",
				drawTime: "beforeDatasetsDraw",
				xMin: data.days.indexOf(span.from) - 0.5,
				xMax: data.days.indexOf(span.to) + 0.5,
				backgroundColor: patterns[span.kind],
				borderColor: token("--rule-strong"),
				borderWidth: 1
			};
		});
		data.breaks.forEach(function (day, at) {
			boxes["break" + at] = {
				type: "line",
				scaleID: "x",
				value: data.days.indexOf(day) - 0.5,
				borderColor: token("--ink"),
				borderWidth: 1.5,
				borderDash: [2, 4]
			};
		});
		return boxes;
	}

	function lastOnly(values) {
		let last = values.length - 1;
		while (last >= 0 && values[last] === null) {
			last -= 1;
		}
		return values.map((value, at) => (at === last ? value : null));
	}

	function bound(values) {
		return {
			data: values,
			borderColor: token("--pen"),
			borderWidth: 1.25,
			pointRadius: 0,
			pointHitRadius: 0,
			spanGaps: false,
			order: 2
		};
	}

	function datasets(series) {
		return [
			{
				data: series.values,
				showLine: false,
				pointStyle: data.days.map((day) => (data.tagged.includes(day) ? "rectRot" : "circle")),
				pointRadius: data.days.map((day) => (data.days.length > 90 ? 1.8 : 2.6)
						* (data.tagged.includes(day) ? 1.7 : 1)),
				pointHoverRadius: 5,
				pointBackgroundColor: token("--ink"),
				pointBorderColor: token("--sheet"),
				pointBorderWidth: 0.5,
				order: 1
			},
			bound(series.lower),
			bound(series.upper),
			{
				data: lastOnly(series.median3),
				showLine: false,
				pointStyle: "line",
				pointRadius: 9,
				pointHoverRadius: 9,
				pointBorderColor: token("--ink"),
				pointBorderWidth: 2.5,
				clip: false,
				order: 0
			}
		];
	}

	function written(day) {
		return new Date(day + "T00:00:00Z").toLocaleDateString(document.documentElement.lang || undefined,
				{ day: "numeric", month: "short", timeZone: "UTC" });
	}

	function scales(logarithmic) {
		const font = { family: token("--sans"), size: 12 };
		const rhythm = { color: token("--ink-soft"), font: font };
		return {
			x: {
				offset: true,
				grid: { display: false },
				border: { color: token("--ink") },
				ticks: Object.assign({ maxRotation: 0, autoSkipPadding: 18, callback: function (value) {
					return written(this.getLabelForValue(value));
				} }, rhythm)
			},
			y: {
				type: logarithmic ? "logarithmic" : "linear",
				grace: logarithmic ? 0 : "12%",
				grid: { display: false },
				border: { color: token("--ink") },
				ticks: Object.assign({ maxTicksLimit: 6, precision: 0 }, rhythm),
				afterFit: function (axis) {
					axis.width = 44;
				}
			}
		};
	}

	const steps = [5, 7, 10, 15, 20, 30, 40, 50, 70, 100, 150, 200, 300, 400];

	function byLogarithm(axis, values) {
		const seen = values.filter((value) => value !== null);
		if (seen.length > 0) {
			axis.min = Math.min.apply(null, seen) * 0.9;
			axis.max = Math.max.apply(null, seen) * 1.1;
		}
		axis.afterBuildTicks = function (scale) {
			scale.ticks = steps.filter((step) => step >= scale.min && step <= scale.max).map((step) => ({ value: step }));
		};
		axis.ticks.callback = (value) => String(value);
	}

	function draw() {
		const patterns = hatches();
		charts.forEach((chart) => chart.destroy());
		charts = [];
		canvases.forEach(function (canvas) {
			const series = data[canvas.dataset.series];
			canvas.closest("figure").hidden = !series;
			if (!series) {
				return;
			}
			const logarithmic = canvas.dataset.series === "rmssd";
			const axes = scales(logarithmic);
			if (logarithmic) {
				byLogarithm(axes.y, series.values.concat(series.lower, series.upper));
			}
			charts.push(new window.Chart(canvas, {
				type: "line",
				data: { labels: data.days, datasets: datasets(series) },
				options: {
					animation: still.matches ? false : { duration: 200 },
					maintainAspectRatio: false,
					locale: document.documentElement.lang || undefined,
					interaction: { mode: "nearest", intersect: true },
					scales: axes,
					plugins: {
						legend: { display: false },
						annotation: { animations: false, annotations: spans(patterns) },
						tooltip: {
							displayColors: false,
							filter: (item) => item.datasetIndex === 0,
							callbacks: { title: (items) => (items.length === 0 ? "" : written(items[0].label)) }
						}
					}
				}
			}));
		});
	}

	draw();
	dark.addEventListener("change", draw);
}());
