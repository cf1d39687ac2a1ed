package org.fallow.account;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Locale;

import org.fallow.platform.StartFailure;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * The address people reach Fallow at, the setting {@code fallow.public-url}: links in
 * mails begin with it, and passkeys are bound to its host.
 */
@Component
public class PublicUrl {

	private final URI address;

	PublicUrl(@Value("${fallow.public-url}") String address) {
		this.address = read(address.strip().replaceAll("/+$", ""));
	}

	private static URI read(String address) {
		try {
			URI read = new URI(address);
			String scheme = String.valueOf(read.getScheme()).toLowerCase(Locale.ROOT);
			boolean web = scheme.equals("https") || scheme.equals("http");
			if (web && read.getHost() != null && read.getRawQuery() == null && read.getRawFragment() == null
					&& read.getRawUserInfo() == null) {
				return read;
			}
			throw new StartFailure("start.public-url", address);
		}
		catch (URISyntaxException ex) {
			throw new StartFailure(ex, "start.public-url", address);
		}
	}

	/**
	 * A link to a page.
	 * @param path from its slash on
	 * @return the whole address
	 */
	public String link(String path) {
		return this.address + path;
	}

	String host() {
		return this.address.getHost().toLowerCase(Locale.ROOT);
	}

	/** Scheme, host and, where it is not the usual one, port, as browsers name it. */
	String origin() {
		String scheme = this.address.getScheme().toLowerCase(Locale.ROOT);
		int port = this.address.getPort();
		boolean usual = port < 0 || port == (scheme.equals("https") ? 443 : 80);
		return scheme + "://" + host() + (usual ? "" : ":" + port);
	}

}
