package org.fallow.platform;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;

import io.zonky.test.db.postgres.embedded.DefaultPostgresBinaryResolver;
import io.zonky.test.db.postgres.embedded.PgBinaryResolver;

/**
 * The database's programs, unpacked per home folder by {@link Programs}. The library
 * remembers where it found them by this object; naming the folder keeps two homes of one
 * process apart.
 *
 * @param folder where they are unpacked
 */
record Binaries(Path folder) implements PgBinaryResolver {

	@Override
	public InputStream getPgBinary(String system, String machineHardware) throws IOException {
		return packed(system, machineHardware);
	}

	/** The archive of the programs, as it comes with Fallow. */
	static InputStream packed(String system, String machineHardware) throws IOException {
		return DefaultPostgresBinaryResolver.INSTANCE.getPgBinary(system, machineHardware);
	}

}
