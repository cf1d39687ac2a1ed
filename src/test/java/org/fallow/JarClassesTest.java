package org.fallow;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.jar.Attributes.Name;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

class JarClassesTest {

	private final ClassLoader before = Thread.currentThread().getContextClassLoader();

	private JarClasses loader;

	@BeforeEach
	void twoJarsWithOnePackage(@TempDir Path folder) throws IOException {
		this.loader = new JarClasses(
				new URL[] { jar(folder.resolve("one.jar"), "1.0", First.class),
						jar(folder.resolve("two.jar"), "2.0", Second.class, Ends.class) },
				ClassLoader.getPlatformClassLoader());
	}

	@AfterEach
	void close() throws IOException {
		this.loader.close();
		Thread.currentThread().setContextClassLoader(this.before);
	}

	@Test
	void findsTheClassesOfAPackageInEveryJar() throws Exception {
		assertThat(this.loader.loadClass(First.class.getName()).getClassLoader()).isSameAs(this.loader);
		assertThat(this.loader.loadClass(Second.class.getName()).getClassLoader()).isSameAs(this.loader);
		assertThat(this.loader.loadClass(First.class.getName())).isSameAs(this.loader.loadClass(First.class.getName()));
		assertThat(this.loader.loadClass(First.class.getName()).getPackage().getImplementationVersion())
			.isEqualTo("1.0");
		assertThat(this.loader.loadClass(Second.class.getName())
			.getProtectionDomain()
			.getCodeSource()
			.getLocation()
			.toString()).endsWith("two.jar!/");
	}

	@Test
	void asksTheParentFirstAndTellsWhatIsMissing() throws Exception {
		assertThat(this.loader.loadClass("java.sql.Driver").getClassLoader()).isNotSameAs(this.loader);
		assertThatExceptionOfType(ClassNotFoundException.class)
			.isThrownBy(() -> this.loader.loadClass("org.fallow.Nowhere"))
			.withMessage("org.fallow.Nowhere");
	}

	@Test
	void findsResourcesInTheOrderOfTheJars() throws Exception {
		assertThat(this.loader.getResource("text.txt").openStream()).hasContent("1.0");
		assertThat(Collections.list(this.loader.getResources("text.txt"))).map((found) -> {
			try (InputStream stream = found.openStream()) {
				return new String(stream.readAllBytes());
			}
		}).containsExactly("1.0", "2.0");
		assertThat(this.loader.getResource("none.txt")).isNull();
	}

	@Test
	void runsAMainMethodAsItsOwn() {
		assertThatExceptionOfType(IllegalStateException.class)
			.isThrownBy(() -> JarClasses.runMain(this.loader, Ends.class.getName(), new String[] { "word" }))
			.withMessage("word, the thread's own loader: true");
	}

	@Test
	void leavesEveryOtherLoaderAlone() throws IOException {
		assertThat(JarClasses.insteadOf(JarClassesTest.class.getClassLoader())).isNull();
		try (URLClassLoader other = new URLClassLoader(this.loader.getURLs(), null)) {
			assertThat(JarClasses.insteadOf(other)).isNull();
		}
	}

	private static URL jar(Path file, String version, Class<?>... classes) throws IOException {
		Manifest manifest = new Manifest();
		manifest.getMainAttributes().put(Name.MANIFEST_VERSION, "1.0");
		manifest.getMainAttributes().put(Name.IMPLEMENTATION_VERSION, version);
		try (JarOutputStream jar = new JarOutputStream(Files.newOutputStream(file), manifest)) {
			jar.putNextEntry(new JarEntry("text.txt"));
			jar.write(version.getBytes());
			for (Class<?> type : classes) {
				String path = type.getName().replace('.', '/') + ".class";
				jar.putNextEntry(new JarEntry(path));
				try (InputStream bytes = JarClassesTest.class.getClassLoader().getResourceAsStream(path)) {
					bytes.transferTo(jar);
				}
			}
		}
		return new URL("jar:" + file.toUri() + "!/");
	}

	/** In the first jar. */
	public static class First {

	}

	/** In the second. */
	public static class Second {

	}

	/** In the second, too. */
	public static class Ends {

		public static void main(String[] args) {
			boolean own = Thread.currentThread().getContextClassLoader() == Ends.class.getClassLoader();
			throw new IllegalStateException(args[0] + ", the thread's own loader: " + own);
		}

	}

}
