package org.fallow.platform;

import java.io.IOException;
import java.nio.file.Files;

import org.springframework.util.FileSystemUtils;

/**
 * The demo's home, emptied at each start unless it shall be kept. Only a home that the
 * demo made is ever emptied: a mark in the folder tells.
 */
final class DemoHome {

	private DemoHome() {
	}

	static void prepare(Home home, boolean keep) throws IOException {
		boolean marked = Files.exists(home.demoMark());
		if (Files.exists(home.database())) {
			if (!marked) {
				throw new StartFailure("start.demo-home-not-demo", home.folder().toString());
			}
			if (!keep) {
				empty(home);
			}
		}
		if (!marked) {
			Files.createFile(home.demoMark());
		}
	}

	private static void empty(Home home) throws IOException {
		new Leftovers(home).stop();
		FileSystemUtils.deleteRecursively(home.database());
		Files.deleteIfExists(home.passwords());
	}

}
