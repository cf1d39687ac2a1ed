package org.fallow.assess;

/**
 * Remembers in 4 MB, however many there are, which people have been met: a Bloom filter
 * of 2^25 bits with 7 hashes. It never forgets anybody; it may take somebody new for
 * somebody met, one in a hundred thousand at a million people and four in ten at ten
 * million, so its word has to be confirmed in the file.
 */
final class SeenPeople {

	private static final int BITS = 1 << 25;

	private static final int HASHES = 7;

	private static final long FNV_OFFSET = 0xcbf29ce484222325L;

	private static final long FNV_PRIME = 0x100000001b3L;

	private final long[] words = new long[BITS / Long.SIZE];

	/** Adds a person; true if that person was perhaps added before. */
	boolean add(String person) {
		long hash = FNV_OFFSET;
		for (int i = 0; i < person.length(); i++) {
			hash = (hash ^ person.charAt(i)) * FNV_PRIME;
		}
		long first = mixed(hash);
		long step = mixed(first) | 1;
		boolean seen = true;
		for (int i = 0; i < HASHES; i++) {
			seen &= set((int) ((first + i * step) >>> (Long.SIZE - 25)));
		}
		return seen;
	}

	private boolean set(int bit) {
		long mask = 1L << bit;
		boolean was = (this.words[bit / Long.SIZE] & mask) != 0;
		this.words[bit / Long.SIZE] |= mask;
		return was;
	}

	/** The finalizer of MurmurHash3, which is in the public domain. */
	private static long mixed(long value) {
		long mixed = (value ^ (value >>> 33)) * 0xff51afd7ed558ccdL;
		mixed = (mixed ^ (mixed >>> 33)) * 0xc4ceb9fe1a85ec53L;
		return mixed ^ (mixed >>> 33);
	}

}
