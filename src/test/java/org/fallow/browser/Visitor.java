package org.fallow.browser;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.context.MessageSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A person at a browser: goes to pages, fills in forms by the names of their fields,
 * reads. What a page says is looked up in the messages, never repeated in a test.
 */
final class Visitor {

	private final Browser browser;

	private final String address;

	private final MessageSource messages;

	Visitor(Browser browser, int port, MessageSource messages) {
		this.browser = browser;
		this.address = "http://localhost:" + port;
		this.messages = messages;
	}

	void signIn(String username) {
		signIn(username, Runners.PASSWORD);
	}

	void signIn(String username, String password) {
		go("/sign-in");
		type("username", username);
		type("password", password);
		press("button.primary");
		assertThat(path()).isNotEqualTo("/sign-in");
	}

	void go(String path) {
		this.browser.driver().get(this.address + path);
	}

	String path() {
		return this.browser.driver().getCurrentUrl().substring(this.address.length());
	}

	/** Waits until a script has led to a page. */
	void waitsFor(String path) {
		await().withMessage(() -> "still on " + path() + ":\n" + text()).until((driver) -> path().equals(path));
	}

	/** All of the page that can be seen, as text. */
	String text() {
		return this.browser.driver().findElement(By.tagName("body")).getText();
	}

	/** What a message says. */
	String say(String code, Object... arguments) {
		return this.messages.getMessage(code, arguments, Locale.ENGLISH);
	}

	/** Sees a message, on this page or on the one that a press leads to. */
	void sees(String code, Object... arguments) {
		String said = say(code, arguments);
		await().withMessage(() -> "no \"" + said + "\" on " + path() + ":\n" + text())
			.until((driver) -> text().contains(said));
	}

	/** Chromium says in two ways that an element's page has gone. */
	private static boolean isGone(WebElement element) {
		try {
			element.isEnabled();
			return false;
		}
		catch (StaleElementReferenceException ex) {
			return true;
		}
		catch (WebDriverException ex) {
			return String.valueOf(ex.getMessage()).contains("does not belong to the document");
		}
	}

	private WebDriverWait await() {
		WebDriverWait wait = new WebDriverWait(this.browser.driver(), Duration.ofSeconds(20));
		wait.ignoring(WebDriverException.class);
		return wait;
	}

	void seesNot(String code, Object... arguments) {
		assertThat(text()).doesNotContain(say(code, arguments));
	}

	/** The text of the board's row of one person. */
	String row(String name) {
		return this.browser.driver()
			.findElements(By.cssSelector("table.board tbody tr"))
			.stream()
			.map(WebElement::getText)
			.filter((text) -> text.contains(name))
			.findFirst()
			.orElse("");
	}

	/** Where the board's name of a person leads to, without its day. */
	String link(Predicate<String> name) {
		String address = all("table.board tbody th a").stream()
			.filter((link) -> name.test(link.getText()))
			.map((link) -> link.getDomAttribute("href"))
			.findFirst()
			.orElseThrow();
		return address.replaceAll("[?].*", "");
	}

	/** Puts a value into a field as typing would, dates included. */
	void type(String name, String value) {
		WebElement field = find("[name='" + name + "']");
		if ("date".equals(field.getDomAttribute("type"))) {
			this.browser.driver().executeScript("arguments[0].value = arguments[1]", field, value);
			return;
		}
		field.clear();
		field.sendKeys(value);
	}

	void choose(String name, String value) {
		new Select(find("select[name='" + name + "']")).selectByValue(value);
	}

	/** Ticks a box, or picks one of several. */
	void tick(String name, String value) {
		WebElement box = find("input[name='" + name + "'][value='" + value + "']");
		if (!box.isSelected()) {
			click(box.findElement(By.xpath("ancestor::label")));
		}
	}

	void untick(String name, String value) {
		WebElement box = find("input[name='" + name + "'][value='" + value + "']");
		if (box.isSelected()) {
			click(box.findElement(By.xpath("ancestor::label")));
		}
	}

	/**
	 * Presses a button that sends a form or follows a link, and waits for the next page.
	 */
	void press(String selector) {
		WebElement button = find(selector);
		WebElement before = find("html");
		click(button);
		waitFor(before);
	}

	/** Clicks in the middle of the window, where no bar of the page lies above it. */
	void click(WebElement element) {
		this.browser.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
		element.click();
	}

	private void waitFor(WebElement before) {
		await().until((driver) -> isGone(before));
		new WebDriverWait(this.browser.driver(), Duration.ofSeconds(20))
			.until((driver) -> "complete".equals(this.browser.driver().executeScript("return document.readyState")));
	}

	WebElement find(String selector) {
		return this.browser.driver().findElement(By.cssSelector(selector));
	}

	List<WebElement> all(String selector) {
		return this.browser.driver().findElements(By.cssSelector(selector));
	}

	Browser browser() {
		return this.browser;
	}

}
