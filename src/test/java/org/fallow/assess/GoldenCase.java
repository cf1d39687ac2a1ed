package org.fallow.assess;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.fallow.illness.core.SharedData;

/**
 * One worked example of shared/data/golden: its two files and the file of what is
 * expected of each day.
 */
record GoldenCase(String name, Path mornings, Path events, Path expected) {

	static List<GoldenCase> all() {
		Path folder = SharedData.folder().resolve("golden");
		try (var files = Files.list(folder)) {
			return files.map((file) -> file.getFileName().toString())
				.filter((file) -> file.endsWith(".expected.csv"))
				.map((file) -> file.substring(0, file.indexOf('.')))
				.sorted()
				.map((name) -> new GoldenCase(name, folder.resolve(name + ".mornings.csv"),
						folder.resolve(name + ".events.csv"), folder.resolve(name + ".expected.csv")))
				.toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	@Override
	public String toString() {
		return this.name;
	}

}
