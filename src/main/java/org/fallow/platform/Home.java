package org.fallow.platform;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

import org.jspecify.annotations.Nullable;

/**
 * Fallow's home folder, readable by its user alone (0700) and held by one Fallow at a
 * time through a file lock, which ends with the process however the process ends.
 */
final class Home implements AutoCloseable {

	private static final long MEGABYTE = 1024L * 1024;

	private final Path folder;

	private final FileChannel lock;

	private Home(Path folder, FileChannel lock) {
		this.folder = folder;
		this.lock = lock;
	}

	/**
	 * Makes the folder where needed and takes its lock.
	 * @param folder where the home is or shall be
	 * @return the home, to be closed when the process no longer uses it
	 */
	static Home open(Path folder) {
		try {
			Files.createDirectories(folder);
			Path home = folder.toRealPath();
			keepPrivate(home, "rwx------");
			return new Home(home, lock(home));
		}
		catch (IOException ex) {
			throw failure(ex, folder);
		}
	}

	private static FileChannel lock(Path home) throws IOException {
		FileChannel channel = FileChannel.open(home.resolve("lock"), StandardOpenOption.CREATE,
				StandardOpenOption.WRITE);
		if (tryLock(channel) == null) {
			channel.close();
			throw new StartFailure("start.home-in-use", home.toString());
		}
		return channel;
	}

	private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
		try {
			return channel.tryLock();
		}
		catch (OverlappingFileLockException ex) {
			return null;
		}
	}

	private static StartFailure failure(IOException ex, Path folder) {
		if (saysDiskFull(ex)) {
			return new StartFailure(ex, "start.disk-full", folder.toString(), "0", "1");
		}
		return new StartFailure(ex, "start.home-not-writable", folder.toString());
	}

	/** Whether something could not be written for want of room on the disk. */
	static boolean saysDiskFull(Throwable failure) {
		for (Throwable one = failure; one != null; one = one.getCause()) {
			if (saysDiskFull(String.valueOf(one.getMessage()))) {
				return true;
			}
		}
		return false;
	}

	static boolean saysDiskFull(String message) {
		return message.contains("No space left on device") || message.contains("Disk quota exceeded");
	}

	static void keepPrivate(Path path, String permissions) throws IOException {
		if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
			Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
		}
	}

	Path folder() {
		return this.folder;
	}

	/** The data folder of the database; it exists once the first start has finished. */
	Path database() {
		return this.folder.resolve("database");
	}

	/** Where the first start builds the database before it is moved into place. */
	Path databaseInTheMaking() {
		return this.folder.resolve("database.new");
	}

	/** Where the database's programs are unpacked. */
	Path binaries() {
		return this.folder.resolve("binaries");
	}

	/** Where the database's programs are unpacked before they are moved into place. */
	Path binariesInTheMaking() {
		return this.folder.resolve("binaries.new");
	}

	Path passwords() {
		return this.folder.resolve("passwords.properties");
	}

	/** What the database says about itself, since its last start. */
	Path log() {
		return this.folder.resolve("database.log");
	}

	/** Present when the demo made this home and may therefore wipe it. */
	Path demoMark() {
		return this.folder.resolve("made-by-the-demo");
	}

	/** What the disk of the home has free, and all it has. */
	DiskRoom room() throws IOException {
		FileStore disk = Files.getFileStore(this.folder);
		return new DiskRoom(disk.getUsableSpace(), disk.getTotalSpace());
	}

	/** Refuses to go on with less than so many megabytes free. */
	void requireSpace(long megabytes) {
		try {
			long free = Files.getFileStore(this.folder).getUsableSpace() / MEGABYTE;
			if (free < megabytes) {
				throw new StartFailure("start.disk-full", this.folder.toString(), Long.toString(free),
						Long.toString(megabytes));
			}
		}
		catch (IOException ex) {
			throw failure(ex, this.folder);
		}
	}

	/** Lets another Fallow take the home. */
	@Override
	public void close() throws IOException {
		this.lock.close();
	}

}
