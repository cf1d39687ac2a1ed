package org.fallow.platform;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What browsers are told with every answer: the security filters say it with the answers
 * they see, and whoever answers before them takes it from here.
 */
public final class AnswerHeaders {

	/** The content security policy: nothing inline, nothing from elsewhere. */
	public static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
			+ "font-src 'self'; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

	/** Passkeys are all that Fallow asks of a browser. */
	public static final String PERMISSIONS = "accelerometer=(), autoplay=(), bluetooth=(), camera=(), "
			+ "display-capture=(), encrypted-media=(), fullscreen=(), gamepad=(), geolocation=(), gyroscope=(), "
			+ "hid=(), idle-detection=(), local-fonts=(), magnetometer=(), microphone=(), midi=(), payment=(), "
			+ "picture-in-picture=(), screen-wake-lock=(), serial=(), usb=(), web-share=(), "
			+ "xr-spatial-tracking=(), publickey-credentials-create=(self), publickey-credentials-get=(self)";

	private static final Map<String, String> ALL = headers();

	private AnswerHeaders() {
	}

	/**
	 * All of them.
	 * @return values by name
	 */
	public static Map<String, String> all() {
		return ALL;
	}

	private static Map<String, String> headers() {
		Map<String, String> headers = new LinkedHashMap<>();
		headers.put("Content-Security-Policy", POLICY);
		headers.put("Permissions-Policy", PERMISSIONS);
		headers.put("Referrer-Policy", "no-referrer");
		headers.put("X-Content-Type-Options", "nosniff");
		headers.put("X-Frame-Options", "DENY");
		headers.put("Cross-Origin-Opener-Policy", "same-origin");
		headers.put("Cross-Origin-Resource-Policy", "same-origin");
		headers.put("Cache-Control", "no-cache, no-store, max-age=0, must-revalidate");
		return Collections.unmodifiableMap(headers);
	}

}
