package org.fallow.platform;

import java.nio.file.Path;

import org.springframework.core.env.Environment;
import org.springframework.core.env.Profiles;
import org.springframework.util.StringUtils;

/**
 * Which home folder a start uses: {@code fallow.home}, else {@code .fallow} in the user's
 * own folder, or {@code .fallow-demo} there with the profile {@code demo}.
 *
 * @param folder the home folder, absolute
 * @param demo whether this is the demo
 * @param keep whether the demo goes on with what it has ({@code fallow.demo.keep})
 */
record HomeChoice(Path folder, boolean demo, boolean keep) {

	static HomeChoice from(Environment environment) {
		boolean demo = environment.acceptsProfiles(Profiles.of("demo"));
		boolean keep = environment.getProperty("fallow.demo.keep", Boolean.class, false);
		String configured = environment.getProperty("fallow.home");
		Path folder = StringUtils.hasText(configured) ? Path.of(configured)
				: Path.of(System.getProperty("user.home"), demo ? ".fallow-demo" : ".fallow");
		return new HomeChoice(folder.toAbsolutePath().normalize(), demo, keep);
	}

}
