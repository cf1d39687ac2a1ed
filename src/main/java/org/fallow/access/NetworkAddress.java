package org.fallow.access;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;

/**
 * The address of a machine on a network, read from a literal: never a name that would be
 * looked up, never free text. An IPv4 address within an IPv6 one is the IPv4 address; a
 * zone ({@code fe80::1%eth0}) says nothing on another machine and is left out.
 */
public final class NetworkAddress {

	/** The longest literal with a zone is shorter. */
	private static final int LONGEST = 80;

	private static final String OCTET = "(25[0-5]|2[0-4]\\d|1\\d\\d|[1-9]?\\d)";

	private static final Pattern FOUR = Pattern.compile(OCTET + "(\\." + OCTET + "){3}");

	private static final Pattern SIX = Pattern.compile("[0-9a-fA-F:.]*:[0-9a-fA-F:.]*");

	/** Bytes of an IPv6 address that one network has in common. */
	private static final int NETWORK_BYTES = 8;

	private final InetAddress address;

	private NetworkAddress(InetAddress address) {
		this.address = address;
	}

	/**
	 * Reads a literal.
	 * @param text as it came
	 * @return the address; empty for anything else, such as a name, {@code unknown},
	 * {@code 010.0.0.1} or {@code 1.2}
	 */
	public static Optional<NetworkAddress> of(@Nullable String text) {
		if (text == null || text.length() > LONGEST) {
			return Optional.empty();
		}
		int zone = text.indexOf('%');
		String literal = (zone >= 0) ? text.substring(0, zone) : text;
		boolean fits = (zone >= 0) ? SIX.matcher(literal).matches()
				: FOUR.matcher(literal).matches() || SIX.matcher(literal).matches();
		try {
			return fits ? Optional.of(new NetworkAddress(InetAddress.getByName(literal))) : Optional.empty();
		}
		catch (UnknownHostException ex) {
			return Optional.empty();
		}
	}

	/**
	 * Four or sixteen bytes.
	 * @return a copy
	 */
	public byte[] bytes() {
		return this.address.getAddress();
	}

	/**
	 * What one visitor cannot change at will: an IPv4 address, or the first 64 bits of an
	 * IPv6 one.
	 * @return hexadecimal digits
	 */
	public String network() {
		byte[] bytes = bytes();
		return HexFormat.of()
			.formatHex(bytes, 0, (this.address instanceof Inet6Address) ? NETWORK_BYTES : bytes.length);
	}

	/**
	 * Whether it is this machine itself.
	 * @return true for 127.0.0.0/8 and ::1
	 */
	public boolean isHere() {
		return this.address.isLoopbackAddress();
	}

	@Override
	public boolean equals(@Nullable Object other) {
		return other instanceof NetworkAddress that && Arrays.equals(bytes(), that.bytes());
	}

	@Override
	public int hashCode() {
		return Arrays.hashCode(bytes());
	}

	/** The literal, always written the same way. */
	@Override
	public String toString() {
		return this.address.getHostAddress();
	}

}
