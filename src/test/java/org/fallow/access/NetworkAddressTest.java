package org.fallow.access;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

/** Text forms of addresses: RFC 4291 section 2.2, RFC 4007 section 11 for zones. */
class NetworkAddressTest {

	@ParameterizedTest
	@CsvSource({ "192.0.2.7, 192.0.2.7, c0000207", "2001:DB8::1, 2001:db8:0:0:0:0:0:1, 20010db800000000",
			"fe80::1%eth0, fe80:0:0:0:0:0:0:1, fe80000000000000", "::ffff:192.0.2.7, 192.0.2.7, c0000207",
			"::1, 0:0:0:0:0:0:0:1, 0000000000000000", "255.255.255.255, 255.255.255.255, ffffffff" })
	void readsLiterals(String text, String written, String network) {
		NetworkAddress address = NetworkAddress.of(text).orElseThrow();
		assertThat(address).hasToString(written);
		assertThat(address.network()).isEqualTo(network);
		assertThat(NetworkAddress.of(written)).contains(address);
	}

	@ParameterizedTest
	@ValueSource(strings = { "", " ", "localhost", "unknown", "_hidden", "1", "1.2", "1.2.3", "1.2.3.4.5", "256.0.0.1",
			"010.0.0.1", "0x7f.0.0.1", "127.0.0.1 ", "127.0.0.1\n", "127.0.0.1%lo", "[::1]", "::1::", ":::", ":", "1:2",
			"g::1", "::1\r\nX: y", "::ffff:999.0.0.1", "127.0.0.1:80", "<b>", "\u0661.2.3.4",
			"::1%0123456789012345678901234567890123456789012345678901234567890123456789012345678901" })
	void readsNothingElse(String text) {
		assertThat(NetworkAddress.of(text)).isEmpty();
	}

	@Test
	void knowsThisMachine() {
		assertThat(NetworkAddress.of("127.8.9.1").orElseThrow().isHere()).isTrue();
		assertThat(NetworkAddress.of("::1").orElseThrow().isHere()).isTrue();
		assertThat(NetworkAddress.of("10.0.0.1").orElseThrow().isHere()).isFalse();
		assertThat(NetworkAddress.of(null)).isEmpty();
	}

}
