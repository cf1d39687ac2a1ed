package org.fallow.assess;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;

/**
 * The file the assessments go to. They are written to another one beside it, which takes
 * its name when all is done: there is the whole answer or, whatever happens, what was
 * there before. Only its owner may read it.
 */
final class AssessmentFile implements AutoCloseable {

	private final Path target;

	private final Path beside;

	private final CsvWriter csv;

	private boolean finished;

	private AssessmentFile(Path target, Path beside, CsvWriter csv) {
		this.target = target;
		this.beside = beside;
		this.csv = csv;
	}

	static AssessmentFile to(Path file) {
		try {
			Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
			if (Files.exists(target) && (!Files.isRegularFile(target) || !Files.isWritable(target))) {
				throw BadInput.file(file, "assess.out.no-file");
			}
			Path beside = Files.createTempFile(target.getParent(), ".fallow-", ".csv");
			beside.toFile().deleteOnExit();
			CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(beside, StandardCharsets.UTF_8);
			csv.writeRecord(DayRow.COLUMNS);
			return new AssessmentFile(target, beside, csv);
		}
		catch (IOException ex) {
			throw BadInput.file(file, "assess.out.unwritable");
		}
	}

	void write(List<String> row) {
		try {
			this.csv.writeRecord(row);
		}
		catch (UncheckedIOException ex) {
			throw BadInput.file(this.target, "assess.out.broke-off");
		}
	}

	/** Gives the file its name. */
	void finish() {
		try {
			this.csv.close();
			move();
			this.finished = true;
		}
		catch (IOException | UncheckedIOException ex) {
			throw BadInput.file(this.target, "assess.out.broke-off");
		}
	}

	private void move() throws IOException {
		try {
			Files.move(this.beside, this.target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
		}
		catch (AtomicMoveNotSupportedException ex) {
			Files.move(this.beside, this.target, StandardCopyOption.REPLACE_EXISTING);
		}
	}

	/** Takes an unfinished file away, whether or not its last lines can be written. */
	@Override
	public void close() {
		if (this.finished) {
			return;
		}
		try (this.csv) {
			Files.deleteIfExists(this.beside);
		}
		catch (IOException | UncheckedIOException ex) {
			throw BadInput.file(this.target, "assess.out.broke-off");
		}
	}

}
