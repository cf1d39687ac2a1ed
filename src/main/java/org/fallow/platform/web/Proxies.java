package org.fallow.platform.web;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.fallow.access.NetworkAddress;
import org.fallow.platform.StartFailure;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * The machines whose word about where a request came from counts: the setting
 * {@code fallow.proxies}, addresses and blocks of addresses (CIDR), parted by commas.
 * None is believed unless it is named.
 */
@Component
class Proxies {

	private final List<Block> blocks;

	Proxies(@Value("${fallow.proxies:}") String setting) {
		this.blocks = Arrays.stream(setting.split("[,\\s]+")).filter((one) -> !one.isEmpty()).map(Block::read).toList();
	}

	boolean areNamed() {
		return !this.blocks.isEmpty();
	}

	boolean hold(@Nullable String address) {
		return NetworkAddress.of(address).filter(this::hold).isPresent();
	}

	boolean hold(NetworkAddress address) {
		return this.blocks.stream().anyMatch((block) -> block.holds(address.bytes()));
	}

	/**
	 * Addresses that begin with the same bits.
	 *
	 * @param start one of them
	 * @param bits how many bits are the same
	 */
	private record Block(byte[] start, int bits) {

		static Block read(String text) {
			int slash = text.indexOf('/');
			String bits = (slash < 0) ? "" : text.substring(slash + 1);
			Optional<NetworkAddress> start = NetworkAddress.of((slash < 0) ? text : text.substring(0, slash));
			int all = start.map((one) -> one.bytes().length * Byte.SIZE).orElse(0);
			if (start.isEmpty() || (slash >= 0 && (!bits.matches("\\d{1,3}") || Integer.parseInt(bits) > all))) {
				throw new StartFailure("start.proxies", text);
			}
			return new Block(start.get().bytes(), (slash < 0) ? all : Integer.parseInt(bits));
		}

		boolean holds(byte[] address) {
			if (address.length != this.start.length) {
				return false;
			}
			for (int bit = 0; bit < this.bits; bit++) {
				int mask = 1 << (Byte.SIZE - 1 - bit % Byte.SIZE);
				if ((address[bit / Byte.SIZE] & mask) != (this.start[bit / Byte.SIZE] & mask)) {
					return false;
				}
			}
			return true;
		}

	}

}
