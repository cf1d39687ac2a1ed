package org.fallow.platform;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Properties;

/**
 * The passwords of Fallow's own database, drawn at random on the first start and kept in
 * a file that only Fallow's user can read (0600).
 *
 * @param superuser the password of {@code postgres}
 * @param owner the password of {@code fallow_owner}, who owns the tables
 * @param application the password of {@code fallow_app}, whom the pages work as
 */
record Passwords(String superuser, String owner, String application) {

	private static final SecureRandom RANDOM = new SecureRandom();

	/** Draws three passwords of 192 random bits each, in hexadecimal digits. */
	static Passwords draw() {
		return new Passwords(password(), password(), password());
	}

	private static String password() {
		byte[] bytes = new byte[24];
		RANDOM.nextBytes(bytes);
		return HexFormat.of().formatHex(bytes);
	}

	/** Reads the passwords, or fails when the file or one of them is missing. */
	static Passwords read(Path file) throws IOException {
		Properties properties = new Properties();
		if (Files.exists(file)) {
			try (BufferedReader reader = Files.newBufferedReader(file)) {
				properties.load(reader);
			}
		}
		return new Passwords(required(properties, "postgres", file), required(properties, "fallow_owner", file),
				required(properties, "fallow_app", file));
	}

	private static String required(Properties properties, String role, Path file) {
		String password = properties.getProperty(role);
		if (password == null) {
			throw new StartFailure("start.passwords-missing", file.toString());
		}
		return password;
	}

	/** Writes the passwords so that the file is either whole and on disk or not there. */
	void write(Path file) throws IOException {
		writePrivately(file,
				List.of("postgres=" + this.superuser, "fallow_owner=" + this.owner, "fallow_app=" + this.application));
	}

	static void writePrivately(Path file, List<String> lines) throws IOException {
		Path draft = file.resolveSibling(file.getFileName() + ".draft");
		Files.deleteIfExists(draft);
		Files.createFile(draft);
		Home.keepPrivate(draft, "rw-------");
		Files.write(draft, lines);
		try (FileChannel channel = FileChannel.open(draft, StandardOpenOption.WRITE)) {
			channel.force(true);
		}
		Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE);
	}

	/** Keeps the passwords out of logs. */
	@Override
	public String toString() {
		return "Passwords[hidden]";
	}

}
