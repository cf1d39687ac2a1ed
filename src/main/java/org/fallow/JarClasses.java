package org.fallow;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.net.JarURLConnection;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.security.CodeSigner;
import java.security.CodeSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.Manifest;

import org.jspecify.annotations.Nullable;

/**
 * The classes of a jar of jars, found sooner: a class is looked for first in the jar that
 * had the last class of its package. The loader of the framework asks every jar in turn
 * for every class, which was more than a third of a start. What is found is the same, as
 * long as no class stands in two jars.
 */
final class JarClasses extends URLClassLoader {

	static {
		registerAsParallelCapable();
	}

	private static final String SLOW = "org.springframework.boot.loader.launch.LaunchedClassLoader";

	private final List<Place> places = new ArrayList<>();

	private final Map<String, Place> lastOfPackage = new ConcurrentHashMap<>();

	/**
	 * Opens the jars.
	 * @param jars addresses of jars or of folders in one, each ending in {@code !/}, in
	 * the order of the class path
	 * @param parent asked first for everything
	 * @throws IOException when one of them is no jar, or cannot be read
	 */
	JarClasses(URL[] jars, @Nullable ClassLoader parent) throws IOException {
		super(jars, parent);
		for (URL jar : jars) {
			if (!(jar.openConnection() instanceof JarURLConnection connection)) {
				throw new IOException(jar + " is not a jar");
			}
			connection.setUseCaches(true);
			this.places
				.add(new Place(jar, connection.getJarFile(), new CodeSource(jar, (CodeSigner @Nullable []) null)));
		}
	}

	/**
	 * The loader that finds the same classes sooner.
	 * @param present the loader of the running classes
	 * @return its substitute; none where it is not the one that reads a jar of jars, or
	 * reads anything else
	 */
	static @Nullable ClassLoader insteadOf(ClassLoader present) {
		if (present instanceof URLClassLoader launched && launched.getClass().getName().equals(SLOW)) {
			try {
				return new JarClasses(launched.getURLs(), launched.getParent());
			}
			catch (IOException ex) {
				return null;
			}
		}
		return null;
	}

	/**
	 * Runs the main method of a class as a loader finds it, with that loader as the
	 * thread's own.
	 */
	static void runMain(ClassLoader loader, String className, String[] args) throws Throwable {
		Thread.currentThread().setContextClassLoader(loader);
		Method main = Class.forName(className, false, loader).getMethod("main", String[].class);
		try {
			main.invoke(null, (Object) args);
		}
		catch (InvocationTargetException ex) {
			Throwable cause = ex.getCause();
			throw (cause != null) ? cause : ex;
		}
	}

	@Override
	protected Class<?> findClass(String name) throws ClassNotFoundException {
		String path = name.replace('.', '/') + ".class";
		String packageName = name.substring(0, Math.max(0, name.lastIndexOf('.')));
		Place last = this.lastOfPackage.get(packageName);
		JarEntry entry = (last != null) ? last.jar().getJarEntry(path) : null;
		if (last == null || entry == null) {
			for (Place place : this.places) {
				entry = place.jar().getJarEntry(path);
				if (entry != null) {
					last = place;
					this.lastOfPackage.put(packageName, place);
					break;
				}
			}
		}
		if (last == null || entry == null) {
			throw new ClassNotFoundException(name);
		}
		try {
			definePackage(packageName, last);
			byte[] bytes;
			try (InputStream stream = last.jar().getInputStream(entry)) {
				bytes = stream.readAllBytes();
			}
			return defineClass(name, bytes, 0, bytes.length, last.source());
		}
		catch (IOException ex) {
			throw new ClassNotFoundException(name, ex);
		}
	}

	private void definePackage(String name, Place place) throws IOException {
		if (!name.isEmpty() && getDefinedPackage(name) == null) {
			Manifest manifest = place.jar().getManifest();
			try {
				definePackage(name, (manifest != null) ? manifest : new Manifest(), place.address());
			}
			catch (IllegalArgumentException ex) {
				// another thread was first
				if (getDefinedPackage(name) == null) {
					throw ex;
				}
			}
		}
	}

	@Override
	public @Nullable URL findResource(String name) {
		for (Place place : this.places) {
			if (place.jar().getJarEntry(name) != null) {
				return place.addressOf(name);
			}
		}
		return null;
	}

	@Override
	public Enumeration<URL> findResources(String name) {
		List<URL> found = new ArrayList<>();
		for (Place place : this.places) {
			if (place.jar().getJarEntry(name) != null) {
				found.add(place.addressOf(name));
			}
		}
		return Collections.enumeration(found);
	}

	private record Place(URL address, JarFile jar, CodeSource source) {

		URL addressOf(String name) {
			try {
				return new URL(this.address, name);
			}
			catch (MalformedURLException ex) {
				throw new UncheckedIOException(ex);
			}
		}

	}

}
