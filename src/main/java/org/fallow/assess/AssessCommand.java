package org.fallow.assess;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.exchange.csv.Codes;
import org.fallow.exchange.csv.ImportField;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleHash;
import org.fallow.rules.RuleJson;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/**
 * The command {@code assess}: assessments of a file of mornings, without server or
 * database. The same files give the same answer on any machine and day.
 */
@Command(name = AssessCommand.NAME, resourceBundle = Sentences.BUNDLE,
		versionProvider = AssessCommand.VersionAndRules.class, sortOptions = false, usageHelpWidth = 100)
public final class AssessCommand implements Callable<Integer> {

	/** The word that calls it. */
	public static final String NAME = "assess";

	/** Exit code: the assessments are written. */
	public static final int DONE = 0;

	/** Exit code: something is wrong with a file; nothing was written. */
	public static final int BAD_INPUT = 1;

	/** Exit code: something is wrong with the command line; nothing was written. */
	public static final int BAD_USAGE = 2;

	@Spec
	@SuppressWarnings("NullAway.Init")
	private CommandSpec spec;

	@Option(names = "--in", required = true, paramLabel = "FILE", descriptionKey = "assess.option.in")
	@SuppressWarnings("NullAway.Init")
	private Path in;

	@Option(names = "--out", required = true, paramLabel = "FILE", descriptionKey = "assess.option.out")
	@SuppressWarnings("NullAway.Init")
	private Path out;

	@Option(names = "--events", paramLabel = "FILE", descriptionKey = "assess.option.events")
	private @Nullable Path events;

	@Option(names = "--rules", paramLabel = "FILE", descriptionKey = "assess.option.rules")
	private @Nullable Path rules;

	@Option(names = "--column", paramLabel = "FIELD=NAME", converter = FieldWord.class,
			descriptionKey = "assess.option.column")
	private Map<ImportField, String> columns = new LinkedHashMap<>();

	@Option(names = "--method", paramLabel = "WORD", defaultValue = "other", converter = MethodWord.class,
			descriptionKey = "assess.option.method")
	private Method method = Method.OTHER;

	@Option(names = "--posture", paramLabel = "WORD", defaultValue = "lying", converter = PostureWord.class,
			descriptionKey = "assess.option.posture")
	private Posture posture = Posture.LYING;

	@Option(names = "--leave-out-bad-rows", descriptionKey = "assess.option.leave-out-bad-rows")
	private boolean leaveOutBadRows;

	@Option(names = "--no-forecast", descriptionKey = "assess.option.no-forecast")
	private boolean noForecast;

	@Option(names = "--print-rules", help = true, descriptionKey = "assess.option.print-rules")
	private boolean printRules;

	@Option(names = { "-h", "--help" }, usageHelp = true, descriptionKey = "assess.option.help")
	private boolean help;

	@Option(names = { "-V", "--version" }, versionHelp = true, descriptionKey = "assess.option.version")
	private boolean version;

	/**
	 * Runs the command.
	 * @param out takes help and version
	 * @param err takes everything else it says
	 * @param args the command line without the command's name
	 * @return exit code
	 */
	public static int run(PrintWriter out, PrintWriter err, String... args) {
		return new CommandLine(new AssessCommand()).setOut(out)
			.setErr(err)
			.setParameterExceptionHandler(AssessCommand::sayUsage)
			.execute(args);
	}

	private static int sayUsage(ParameterException ex, String[] args) {
		PrintWriter err = ex.getCommandLine().getErr();
		err.println(ex.getMessage());
		err.println(Sentences.of("assess.usage-hint"));
		return BAD_USAGE;
	}

	@Override
	public Integer call() {
		if (this.printRules) {
			this.spec.commandLine().getOut().println(RuleJson.canonical(DefaultRules.ruleSet()));
			return DONE;
		}
		checkFilesDiffer();
		try {
			assess();
			return DONE;
		}
		catch (BadInput ex) {
			say(Sentences.of(ex));
			say(Sentences.of("assess.nothing-written"));
			return BAD_INPUT;
		}
	}

	private void assess() {
		long start = System.nanoTime();
		List<Message> notes = new ArrayList<>();
		RuleBook book = RuleBook.of(RulesFile.read(this.rules));
		Assessing assessing = new Assessing(this.in, this.events,
				new ColumnChoice(this.columns, this.method, this.posture), book, !this.noForecast, notes::add,
				this.leaveOutBadRows ? this::sayLeftOut : null);
		try (AssessmentFile file = AssessmentFile.to(this.out)) {
			Assessing.Done done = assessing.into(file::write);
			file.finish();
			notes.forEach((note) -> say(Sentences.of(note)));
			sayDone(done, book.entries().get(0).hash(), (System.nanoTime() - start) / 1e9);
		}
	}

	private void sayLeftOut(BadInput bad) {
		say(Sentences.of("assess.left-out", Sentences.of(bad)));
	}

	private void sayDone(Assessing.Done done, String hash, double seconds) {
		if (done.silentRows() > 0) {
			say(Sentences.of("assess.silent-rows", done.silentRows()));
		}
		say(Sentences.of("assess.done", done.days(), done.people(), seconds, Math.round(done.days() / seconds)));
		say(Sentences.of("assess.done.rules", hash));
	}

	private void say(String sentence) {
		this.spec.commandLine().getErr().println(sentence);
	}

	private void checkFilesDiffer() {
		for (Path other : new @Nullable Path[] { this.in, this.events, this.rules }) {
			if (other != null && isSame(other, this.out)) {
				throw new ParameterException(this.spec.commandLine(), Sentences.of("assess.out.same", this.out));
			}
		}
	}

	private static boolean isSame(Path one, Path other) {
		try {
			return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
		}
		catch (IOException ex) {
			return false;
		}
	}

	/** The field a column is for. */
	static final class FieldWord implements ITypeConverter<ImportField> {

		@Override
		public ImportField convert(String text) {
			return Codes.oneOf(ImportField.values(), text).orElseThrow(() -> unknown(text, ImportField.values()));
		}

	}

	/** How the heart rate was taken. */
	static final class MethodWord implements ITypeConverter<Method> {

		@Override
		public Method convert(String text) {
			return Codes.method(text).orElseThrow(() -> unknown(text, Method.values()));
		}

	}

	/** Lying, sitting or standing. */
	static final class PostureWord implements ITypeConverter<Posture> {

		@Override
		public Posture convert(String text) {
			return Codes.oneOf(Posture.values(), text).orElseThrow(() -> unknown(text, Posture.values()));
		}

	}

	private static TypeConversionException unknown(String text, Enum<?>[] values) {
		return new TypeConversionException(Sentences.of("assess.word.unknown", text, EventRow.words(values)));
	}

	/** The version of Fallow and the hash of the rule set it comes with. */
	static final class VersionAndRules implements IVersionProvider {

		@Override
		public String[] getVersion() {
			String version = AssessCommand.class.getPackage().getImplementationVersion();
			return new String[] { Sentences.of("assess.version", (version == null) ? "-" : version,
					RuleHash.of(DefaultRules.ruleSet())) };
		}

	}

}
