package org.fallow.illness.core;

import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.api.Assumptions;

/**
 * The open and worked data beside the repository. Absent, its tests are skipped with a
 * message; with CI=true that is a failure.
 */
public final class SharedData {

	private SharedData() {
	}

	/** The folder, after checking that it is there. */
	public static Path folder() {
		Path folder = Path.of("..", "shared", "data");
		boolean there = Files.isDirectory(folder);
		if (!there && "true".equals(System.getenv("CI"))) {
			throw new AssertionError("../shared/data is missing; CI must have it");
		}
		Assumptions.assumeTrue(there, "../shared/data is not here, so checks against it are skipped");
		return folder;
	}

}
