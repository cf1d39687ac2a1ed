package org.fallow.platform.web;

import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import jakarta.servlet.ServletException;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.fallow.access.NetworkAddress;

/**
 * Believes the {@code X-Forwarded-} headers of the named {@link Proxies} and of nobody
 * else. The visitor is the last address of {@code X-Forwarded-For} that is no proxy's;
 * what stands before it the visitor may have made up, and where it is no address the
 * request is the proxy's own. The header {@code Forwarded} (RFC 7239) is not read.
 */
class Forwarded extends ValveBase {

	/** An address as some proxies write it: in brackets, or with a port. */
	private static final Pattern WITH_PORT = Pattern.compile("\\[([^\\]]+)](:\\d{1,5})?|([0-9.]+):\\d{1,5}");

	private static final Pattern HOST = Pattern.compile("([A-Za-z0-9.-]{1,253}|\\[[0-9a-fA-F:.]{2,45}])(:\\d{1,5})?");

	private static final int HTTPS_PORT = 443;

	private static final int HTTP_PORT = 80;

	private static final int LAST_PORT = 65_535;

	private final Proxies proxies;

	Forwarded(Proxies proxies) {
		super(true);
		this.proxies = proxies;
	}

	@Override
	public void invoke(Request request, Response response) throws IOException, ServletException {
		if (!this.proxies.hold(request.getPeerAddr())) {
			getNext().invoke(request, response);
			return;
		}
		Connection before = Connection.of(request);
		try {
			visitor(request).ifPresent((address) -> {
				request.setRemoteAddr(address.toString());
				request.setRemoteHost(address.toString());
			});
			takeScheme(request);
			takeHost(request);
			getNext().invoke(request, response);
		}
		finally {
			before.restore(request);
		}
	}

	private Optional<NetworkAddress> visitor(Request request) {
		List<String> hops = values(request, "X-Forwarded-For");
		Optional<NetworkAddress> nearest = Optional.empty();
		for (int i = hops.size() - 1; i >= 0; i--) {
			Optional<NetworkAddress> hop = NetworkAddress.of(withoutPort(hops.get(i)));
			if (hop.isEmpty()) {
				return nearest;
			}
			nearest = hop;
			if (!this.proxies.hold(hop.get())) {
				return nearest;
			}
		}
		return nearest;
	}

	private static String withoutPort(String hop) {
		Matcher found = WITH_PORT.matcher(hop);
		return !found.matches() ? hop : (found.group(1) != null) ? found.group(1) : found.group(3);
	}

	/** By TLS only where every hop says so. */
	private static void takeScheme(Request request) {
		List<String> schemes = values(request, "X-Forwarded-Proto");
		boolean tls = !schemes.isEmpty() && schemes.stream().allMatch("https"::equalsIgnoreCase);
		boolean clear = schemes.stream().anyMatch("http"::equalsIgnoreCase);
		if (tls || clear) {
			request.setSecure(tls);
			request.getCoyoteRequest().scheme().setString(tls ? "https" : "http");
			request.getCoyoteRequest().setServerPort(port(request, tls ? HTTPS_PORT : HTTP_PORT));
		}
	}

	private static int port(Request request, int otherwise) {
		List<String> ports = values(request, "X-Forwarded-Port");
		String port = ports.isEmpty() ? "" : ports.get(ports.size() - 1);
		return (port.matches("[1-9]\\d{0,4}") && Integer.parseInt(port) <= LAST_PORT) ? Integer.parseInt(port)
				: otherwise;
	}

	private static void takeHost(Request request) {
		List<String> hosts = values(request, "X-Forwarded-Host");
		Matcher host = HOST.matcher(hosts.isEmpty() ? "" : hosts.get(hosts.size() - 1));
		if (host.matches()) {
			request.getCoyoteRequest().serverName().setString(host.group(1));
		}
	}

	/** The parts of a header that may stand several times, each a list. */
	private static List<String> values(Request request, String header) {
		return Collections.list(request.getHeaders(header))
			.stream()
			.flatMap((line) -> Stream.of(line.split(",", -1)))
			.map(String::strip)
			.toList();
	}

	/**
	 * What a connection that is kept open must not keep of one request.
	 */
	private record Connection(String address, String host, boolean secure, String scheme, String name, int port) {

		static Connection of(Request request) {
			return new Connection(request.getRemoteAddr(), request.getRemoteHost(), request.isSecure(),
					request.getScheme(), request.getServerName(), request.getServerPort());
		}

		void restore(Request request) {
			request.setRemoteAddr(this.address);
			request.setRemoteHost(this.host);
			request.setSecure(this.secure);
			request.getCoyoteRequest().scheme().setString(this.scheme);
			request.getCoyoteRequest().serverName().setString(this.name);
			request.getCoyoteRequest().setServerPort(this.port);
		}

	}

}
