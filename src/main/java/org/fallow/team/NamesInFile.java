package org.fallow.team;

import java.util.Collection;
import java.util.List;

/** Names that somebody else wrote, to find those among them that are nearly the same. */
public final class NamesInFile {

	private final NearNames<String> names = new NearNames<>();

	/**
	 * Takes the names.
	 * @param names each once
	 */
	public NamesInFile(Collection<String> names) {
		names.forEach((name) -> this.names.add(name, name));
	}

	/**
	 * Which others are nearly the same as one. A name that is the same but for white
	 * space, invisible characters or capitals is no other name.
	 * @param name one of them, or any
	 * @return the others
	 */
	public List<String> near(String name) {
		NameKey key = NameKey.of(name);
		return this.names.near(name).stream().filter((other) -> !NameKey.of(other).text().equals(key.text())).toList();
	}

}
