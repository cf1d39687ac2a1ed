package org.fallow.account.web;

import java.io.Serializable;

import org.jspecify.annotations.Nullable;

/**
 * What somebody signed in with, as far as its list of names tells: enough to know one's
 * own devices by.
 *
 * @param browser which browser
 * @param system which system it ran on
 */
public record Device(Browser browser, System system) implements Serializable {

	static Device of(@Nullable String userAgent) {
		String names = (userAgent == null) ? "" : userAgent;
		return new Device(Browser.in(names), System.in(names));
	}

	/**
	 * Browsers; one that calls itself by several names stands before those it imitates.
	 */
	public enum Browser {

		EDGE("Edg"), OPERA("OPR/"), SAMSUNG("SamsungBrowser/"), FIREFOX("Firefox/", "FxiOS/"),
		CHROME("Chrome/", "CriOS/"), SAFARI("Safari/"), OTHER("");

		private final String[] names;

		Browser(String... names) {
			this.names = names;
		}

		private static Browser in(String userAgent) {
			for (Browser browser : values()) {
				if (isNamed(userAgent, browser.names)) {
					return browser;
				}
			}
			return OTHER;
		}

	}

	/** Systems; those built on another stand before it. */
	public enum System {

		ANDROID("Android"), IPHONE("iPhone"), IPAD("iPad"), WINDOWS("Windows"), MAC("Mac OS X"), CHROME_OS("CrOS"),
		LINUX("Linux"), OTHER("");

		private final String[] names;

		System(String... names) {
			this.names = names;
		}

		private static System in(String userAgent) {
			for (System system : values()) {
				if (isNamed(userAgent, system.names)) {
					return system;
				}
			}
			return OTHER;
		}

	}

	private static boolean isNamed(String userAgent, String... names) {
		for (String name : names) {
			if (userAgent.contains(name)) {
				return true;
			}
		}
		return false;
	}

}
