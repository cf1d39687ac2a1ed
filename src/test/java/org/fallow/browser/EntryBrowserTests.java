package org.fallow.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.List;
import java.util.Map;

import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Mornings;
import org.fallow.entry.StoredMorning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The morning on a telephone: with a device, with two fingers and a clock, with a file,
 * without script, on a slow network.
 */
class EntryBrowserTests extends OnRealPages {

	/** What the entry page may weigh on the wire, bytes. */
	private static final long BUDGET = 100_000;

	/** Pages an athlete opens on a telephone. */
	private static final List<String> PAGES = List.of("/today", "/morning", "/session", "/sessions", "/return-path",
			"/report", "/sharing", "/account");

	@RegisterExtension
	static final Browser PHONE = Browser.phone();

	@Autowired
	private Mornings mornings;

	/** Reported in docs/pages.md; the seconds are a script's, not a person's. */
	@Test
	void takesAWellMorningInTwoTaps() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		long begun = System.nanoTime();
		int taps = 1;
		athlete.find("#rhr").click();
		athlete.find("#rhr").sendKeys("50");
		taps++;
		athlete.press("button[name='allWell']");
		athlete.sees("clearance.FULL_TRAINING");
		long millis = Duration.ofNanos(System.nanoTime() - begun).toMillis();
		System.out.println("A well morning: " + taps + " taps, 2 figures, " + millis + " ms by script");
		assertThat(taps).isLessThanOrEqualTo(2);
		assertThat(stored().method()).isEqualTo(Method.STRAP);
	}

	/** By keyboard alone, and what has the focus is never hidden under the bar. */
	@Test
	void entersAWellMorningByKeyboardAlone() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		boolean typed = false;
		for (int tab = 0; tab < 60; tab++) {
			PHONE.driver().switchTo().activeElement().sendKeys(Keys.TAB);
			WebElement focused = PHONE.driver().switchTo().activeElement();
			String name = String.valueOf(focused.getDomAttribute("name"));
			if (name.equals("rhr")) {
				focused.sendKeys("50");
				typed = true;
			}
			if (name.equals("allWell")) {
				assertThat(PHONE.driver()
					.executeScript("const box = arguments[0].getBoundingClientRect();"
							+ "return arguments[0].contains(document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2))",
							focused))
					.isEqualTo(true);
				focused.sendKeys(Keys.ENTER);
				break;
			}
		}
		assertThat(typed).isTrue();
		athlete.sees("clearance.FULL_TRAINING");
		assertThat(stored().rhrBpm()).isEqualTo(50.0);
	}

	/** What is reached without scrolling at 390 by 844: the figure and the one tap. */
	@Test
	void showsTheOneTapWithoutScrolling() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		WebElement button = athlete.find("button[name='allWell']");
		assertThat(button.getRect().getY() + button.getRect().getHeight()).isLessThan(844 - 64);
		assertThat(athlete.text()).contains(athlete.say("morning.not-well"));
	}

	@Test
	void countsThePulseForHalfAMinute() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.find("#count summary").click();
		passSeconds(40);
		athlete.click(athlete.find("[data-seconds='30']"));
		await(athlete, athlete.say("count.ask", 30));
		athlete.find("#counted").sendKeys("25");
		athlete.press("button[name='allWell']");
		athlete.sees("clearance.FULL_TRAINING");
		assertThat(stored().method()).isEqualTo(Method.COUNT_30);
		assertThat(stored().rhrBpm()).isEqualTo(50.0);
	}

	/** Twenty-one taps a second apart, by the page's clock, are 60 a minute. */
	@Test
	void tapsAlongWithThePulse() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.find("#count summary").click();
		PHONE.driver()
			.executeScript("let now = 1000; Date.now = () => now; const tap = document.getElementById('count-tap');"
					+ "for (let i = 0; i <= 20; i++) { now += 1000; tap.dispatchEvent(new PointerEvent('pointerdown')); }");
		await(athlete, athlete.say("count.tapped", 60));
		assertThat(athlete.find("#rhr").getDomProperty("value")).isEqualTo("60");
		assertThat(athlete.find("#method").getDomProperty("value")).isEqualTo("TAP");
	}

	@Test
	void readsAFileOfIntervals(@TempDir Path folder) throws IOException {
		Path file = Files.writeString(folder.resolve("rr.txt"),
				String.join("\n", Collections.nCopies(35, "1190\n1210")));
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.click(athlete.find("details:has(#rr) > summary"));
		athlete.find("#rr-file").sendKeys(file.toString());
		new WebDriverWait(PHONE.driver(), Duration.ofSeconds(10))
			.until((driver) -> !athlete.find("#rr").getDomProperty("value").isEmpty());
		athlete.press("button[name='allWell']");
		athlete.sees("morning.stored.rr", 70, 0, 50.0, 20.0, 0);
		assertThat(stored().rhrBpm()).isEqualTo(50.0);
	}

	/** Without script one counts by a clock; the server works it out. */
	@Test
	void worksWithoutScript() {
		Visitor athlete = signedIn(PHONE, this.annName);
		PHONE.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
		try {
			athlete.go("/morning");
			assertThat(athlete.find("#count-guide").isDisplayed()).isFalse();
			athlete.find("#count summary").click();
			athlete.find("#method").findElement(By.cssSelector("option[value='COUNT_60']")).click();
			athlete.find("#counted").sendKeys("51");
			athlete.find("button[name='allWell']").click();
			await(athlete, athlete.say("clearance.FULL_TRAINING"));
		}
		finally {
			PHONE.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
		}
		assertThat(stored().method()).isEqualTo(Method.COUNT_60);
		assertThat(stored().rhrBpm()).isEqualTo(51.0);
	}

	/** Letters twice as large: everything wraps, nothing is cut. */
	@Test
	void wrapsLettersTwiceAsLarge() {
		Visitor athlete = signedIn(PHONE, this.annName);
		for (String page : PAGES) {
			athlete.go(page);
			PHONE.driver().executeScript("document.documentElement.style.fontSize = '200%'");
			assertThat(PHONE.driver()
				.executeScript(
						"""
								return Array.from(document.querySelectorAll('body *'))
									.filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
									.filter((one) => !one.closest('.nav, .scroll, .visually-hidden, [hidden], details:not([open])'))
									.map((one) => one.tagName + '.' + one.className + ' ' + one.textContent.trim().slice(0, 30));"""))
				.as(page)
				.isEqualTo(List.of());
		}
	}

	/**
	 * As on a slow telephone: a quarter of the speed, 400 kbit/s. Bytes are asserted,
	 * times told.
	 */
	@Test
	void loadsNoMoreThanTheBudget() {
		Visitor athlete = signedIn(PHONE, this.annName);
		PHONE.driver().executeCdpCommand("Network.enable", Map.of());
		PHONE.driver().executeCdpCommand("Network.setCacheDisabled", Map.of("cacheDisabled", true));
		PHONE.driver()
			.executeCdpCommand("Network.emulateNetworkConditions",
					Map.of("offline", false, "latency", 150, "downloadThroughput", 50_000, "uploadThroughput", 50_000));
		PHONE.driver().executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", 4));
		try {
			athlete.go("/morning");
			Map<?, ?> load = (Map<?, ?>) PHONE.driver()
				.executeScript(
						"""
								const page = performance.getEntriesByType('navigation')[0];
								const all = performance.getEntriesByType('resource').concat(page);
								return { bytes: all.reduce((sum, one) => sum + one.transferSize, 0), files: all.length,
									chart: all.some((one) => one.name.includes('chart')),
									usable: Math.round(page.domInteractive), loaded: Math.round(page.domContentLoadedEventEnd) };""");
			System.out.println("The entry page on a slow telephone: " + load);
			assertThat(((Number) load.get("bytes")).longValue()).isBetween(10_000L, BUDGET);
			assertThat(load.get("chart")).isEqualTo(false);
		}
		finally {
			PHONE.driver().executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", 1));
			PHONE.driver()
				.executeCdpCommand("Network.emulateNetworkConditions",
						Map.of("offline", false, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
			PHONE.driver().executeCdpCommand("Network.setCacheDisabled", Map.of("cacheDisabled", false));
		}
	}

	/**
	 * The day is the athlete's by the server's clock; a phone a day ahead changes
	 * nothing.
	 */
	@Test
	void goesByNoClockOfAPhone() {
		PHONE.driver()
			.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source",
					"{ const real = Date.now.bind(Date); Date.now = () => real() + (window.aDayAhead ? 86400000 : 0); }"));
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		PHONE.driver().executeScript("window.aDayAhead = true");
		assertThat(athlete.find("#day").getDomProperty("value")).isEqualTo(Runners.TODAY.toString());
		athlete.type("rhr", "50");
		athlete.press("button[name='allWell']");
		assertThat(stored().rhrBpm()).isEqualTo(50.0);
		athlete.go("/morning");
		athlete.type("day", Runners.TODAY.plusDays(1).toString());
		athlete.press("button[name='allWell']");
		athlete.sees("problems.head");
		assertThat(this.mornings.latest(this.ann.id(), Runners.TODAY.plusDays(1))).isEmpty();
	}

	/** A name from right to left, and a surname of forty letters, at 390 px. */
	@Test
	void showsNamesOfEveryLengthAndDirection() {
		this.runners.athlete(this.team,
				"\u0645\u0631\u064A\u0645 \u0639\u0628\u062F \u0627\u0644\u0631\u062D\u0645\u0646", "Track");
		this.runners.athlete(this.team, "Bo " + "Wolfeschlegelsteinhausenbergerdorffwelch", "Track");
		Visitor coach = signedIn(PHONE, this.coachName);
		for (String page : List.of("/board", "/people", "/roll", "/brief")) {
			coach.go(page);
			assertThat(PHONE.driver().executeScript("return document.documentElement.scrollWidth")).as(page)
				.isEqualTo(390L);
		}
		coach.go("/board");
		assertThat(coach.text()).contains("\u0645\u0631\u064A\u0645", "Wolfeschlegelsteinhausenbergerdorffwelch");
	}

	/** A tagged morning is a mark, another method a break; the table says both. */
	@Test
	void drawsTheOwnMorningsWithMarksAndBreaks() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.find("#method").findElement(By.cssSelector("option[value='COUNT_60']")).click();
		athlete.type("rhr", "50");
		athlete.click(athlete.find("details:has(#rr) > summary"));
		athlete.tick("tags", "TRAVEL");
		athlete.tick("feels", "WELL");
		athlete.press("#unwell button.primary");
		athlete.press("a[href='/mornings']");
		athlete.choose("weeks", "4");
		athlete.press(".day-picker button");
		assertThat(athlete.path()).isEqualTo("/mornings?weeks=4");
		assertThat(PHONE.driver().executeScript("""
				const data = JSON.parse(document.getElementById('chart-data').textContent);
				return [data.days.length, data.tagged.join(), data.breaks.join()];"""))
			.isEqualTo(List.of(28L, Runners.TODAY.toString(), Runners.TODAY.toString()));
		assertThat(athlete.all("canvas")).anySatisfy((canvas) -> assertThat(canvas.getSize().height).isPositive());
		athlete.click(athlete.find(".main details summary"));
		assertThat(athlete.find(".main table tbody tr").getText()).contains(athlete.say("tag.TRAVEL"),
				athlete.say("method.COUNT_60"));
	}

	/**
	 * The day before is shown faintly, and the days without an entry lead to themselves.
	 */
	@Test
	void hintsAtTheLastReadingAndAtMissingDays() {
		this.clock.set(Runners.TODAY.plusDays(2), LocalTime.of(8, 0), ZoneOffset.UTC);
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.sees("morning.rhr.last", "Tue 17 Mar", 51.0);
		athlete.press("a[href='/morning?day=2026-03-18']");
		assertThat(athlete.find("#day").getDomProperty("value")).isEqualTo("2026-03-18");
	}

	/** The page's clock jumps half a second from now. */
	private static void passSeconds(int seconds) {
		PHONE.driver()
			.executeScript("const real = Date.now.bind(Date); let shift = 0; Date.now = () => real() + shift;"
					+ "setTimeout(() => { shift = 4000; setTimeout(() => { shift = " + (seconds * 1000)
					+ "; }, 500); }, 500);");
	}

	private static void await(Visitor athlete, String text) {
		new WebDriverWait(PHONE.driver(), Duration.ofSeconds(20)).until((driver) -> athlete.text().contains(text));
	}

	private MorningEntry stored() {
		return this.mornings.latest(this.ann.id(), Runners.TODAY).map(StoredMorning::entry).orElseThrow();
	}

}
