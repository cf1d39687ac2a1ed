package org.fallow.platform;

import java.util.List;
import java.util.Locale;

import org.fallow.access.NetworkAddress;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.MessageSource;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.springframework.util.StringUtils;

/**
 * From where Fallow can be reached. Passwords and health data must not cross a network in
 * the clear: without TLS, and unless an address is named ({@code server.address}), Fallow
 * listens on its own machine only. Pages read it as {@code @listening}.
 */
@Component("listening")
public class Listening {

	/** The address of a machine for itself. */
	public static final String HERE = "127.0.0.1";

	private static final Logger log = LoggerFactory.getLogger(Listening.class);

	/** Settings by which the server speaks TLS itself. */
	private static final List<String> TLS = List.of("server.ssl.bundle", "server.ssl.key-store",
			"server.ssl.certificate");

	private final Environment environment;

	private final MessageSource messages;

	Listening(Environment environment, MessageSource messages) {
		this.environment = environment;
		this.messages = messages;
	}

	/**
	 * Whether nothing was set that lets others in.
	 * @return true without TLS and without a named address
	 */
	public boolean isHereByDefault() {
		return !isSet("server.address") && !speaksTls();
	}

	/** Whether a named address lets others in without TLS, and no proxy is named. */
	boolean isOpenInTheClear() {
		String address = this.environment.getProperty("server.address", "");
		boolean here = address.equals("localhost")
				|| NetworkAddress.of(address).filter(NetworkAddress::isHere).isPresent();
		return isSet("server.address") && !here && !speaksTls() && !isSet("fallow.proxies");
	}

	private boolean speaksTls() {
		return TLS.stream().anyMatch(this::isSet)
				&& this.environment.getProperty("server.ssl.enabled", Boolean.class, true);
	}

	private boolean isSet(String setting) {
		return StringUtils.hasText(this.environment.getProperty(setting));
	}

	@EventListener(ApplicationReadyEvent.class)
	void say() {
		if (isHereByDefault()) {
			log.info(this.messages.getMessage("listening.here", null, Locale.ENGLISH));
		}
		else if (isOpenInTheClear()) {
			log.warn(this.messages.getMessage("listening.clear", null, Locale.ENGLISH));
		}
	}

}
