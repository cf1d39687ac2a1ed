package org.fallow.platform;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Locale;
import java.util.stream.Stream;

import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;

import org.springframework.util.FileSystemUtils;

/**
 * The database's programs in a home folder. They are unpacked beside their place and
 * moved there when they are complete, so that a start that is cut short leaves either no
 * programs or whole ones; what an earlier Fallow left half unpacked, or a power cut half
 * written, is told by its count of files and bytes and replaced.
 */
final class Programs {

	/** The library that starts the database takes a folder with this file for whole. */
	private static final String MARK = ".exists";

	private final Path place;

	private final byte[] archive;

	private final String name;

	private Programs(Path place, byte[] archive) {
		this.place = place;
		this.archive = archive;
		this.name = "PG-" + digest(archive);
	}

	/**
	 * Unpacks the programs unless they are there whole. None of them may be running.
	 * @throws IOException if they cannot be written, or there are none for this machine
	 */
	static void unpack(Home home) throws IOException {
		Programs programs = new Programs(home.binaries(), archive());
		if (!programs.areWhole()) {
			programs.unpackBeside(home.binariesInTheMaking());
		}
		// a copied home has new times, and the library looks at them
		Files.setLastModifiedTime(programs.folder().resolve(MARK), FileTime.from(Instant.now()));
	}

	/** The folder of the programs that were unpacked. */
	static Path in(Home home) throws IOException {
		try (Stream<Path> folders = Files.list(home.binaries())) {
			return folders.filter((folder) -> Files.exists(folder.resolve(MARK)))
				.findFirst()
				.orElseThrow(() -> new IOException("The database's programs are gone"));
		}
	}

	private static byte[] archive() throws IOException {
		try (InputStream packed = Binaries.packed(system(), System.getProperty("os.arch"))) {
			return packed.readAllBytes();
		}
	}

	private static String system() {
		String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
		return name.startsWith("windows") ? "Windows" : name.startsWith("mac") ? "Darwin" : "Linux";
	}

	private static String digest(byte[] archive) {
		try {
			return HexFormat.of().formatHex(MessageDigest.getInstance("MD5").digest(archive));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private Path folder() {
		return this.place.resolve(this.name);
	}

	private boolean areWhole() throws IOException {
		Path mark = folder().resolve(MARK);
		return Files.isRegularFile(mark) && Files.readString(mark).equals(extent(folder()));
	}

	private void unpackBeside(Path draft) throws IOException {
		FileSystemUtils.deleteRecursively(draft);
		Path unpacked = Files.createDirectories(draft.resolve(this.name));
		try (TarArchiveInputStream entries = new TarArchiveInputStream(
				new XZCompressorInputStream(new ByteArrayInputStream(this.archive)))) {
			for (TarArchiveEntry entry = entries.getNextEntry(); entry != null; entry = entries.getNextEntry()) {
				write(entry, entries, unpacked.resolve(entry.getName()).normalize());
			}
		}
		Files.writeString(unpacked.resolve(MARK), extent(unpacked));
		FileSystemUtils.deleteRecursively(this.place);
		Files.move(draft, this.place, StandardCopyOption.ATOMIC_MOVE);
	}

	private static void write(TarArchiveEntry entry, InputStream content, Path to) throws IOException {
		if (entry.isDirectory()) {
			Files.createDirectories(to);
			return;
		}
		Files.createDirectories(to.resolveSibling("."));
		if (entry.isSymbolicLink()) {
			Files.createSymbolicLink(to, Path.of(entry.getLinkName()));
			return;
		}
		Files.copy(content, to);
		if ((entry.getMode() & 0100) != 0) {
			Home.keepPrivate(to, "rwxr-xr-x");
		}
	}

	/** How many files there are and how many bytes they have. */
	private static String extent(Path folder) throws IOException {
		long files = 0;
		long bytes = 0;
		try (Stream<Path> all = Files.walk(folder)) {
			for (Path file : (Iterable<Path>) all.filter(Files::isRegularFile)::iterator) {
				if (!file.endsWith(MARK) && !file.endsWith("epg-lock")) {
					files++;
					bytes += Files.size(file);
				}
			}
		}
		return files + " files, " + bytes + " bytes";
	}

}
