package org.fallow.wording;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

import org.fallow.access.TraceAction;
import org.fallow.access.TraceSubject;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.Criterion;
import org.fallow.illness.core.CriterionState;
import org.fallow.illness.core.Mark;
import org.fallow.illness.core.ReportKind;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.team.Basis;
import org.fallow.team.Post;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.training.core.Version;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.asm.ClassReader;
import org.springframework.asm.ClassVisitor;
import org.springframework.asm.MethodVisitor;
import org.springframework.asm.Opcodes;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Every code has a sentence in every language. The codes are read from the program, not
 * from the message files: the members of enums, and what stands as text in the compiled
 * classes.
 */
class EveryCodeTest {

	/** What names the members of an enum: all of them, whoever shows them. */
	private static final Map<String, Class<? extends Enum<?>>> ENUMS = new TreeMap<>(Map.ofEntries(
			Map.entry("symptom.", Symptom.class), Map.entry("after.", AfterSession.class),
			Map.entry("kind.", ReportKind.class), Map.entry("clearance.", Clearance.class),
			Map.entry("severity.", Severity.class), Map.entry("feels.", Feels.class), Map.entry("mark.", Mark.class),
			Map.entry("intensity.", Intensity.class), Map.entry("criterionState.", CriterionState.class),
			Map.entry("sessionKind.", PlannedSession.Kind.class), Map.entry("terrain.", PlannedSession.Terrain.class),
			Map.entry("weekKind.", ProgrammeWeek.Kind.class), Map.entry("version.", Version.class),
			Map.entry("post.", Post.class), Map.entry("people.basis.", Basis.class),
			Map.entry("consent.KEPT.", Basis.class), Map.entry("path.", PathName.class),
			Map.entry("protocol.", Protocol.class), Map.entry("method.", Method.class),
			Map.entry("posture.", Posture.class), Map.entry("tag.", ContextTag.class),
			Map.entry("feverMedicine.", FeverMedicine.class), Map.entry("activity.", Activity.class)));

	/**
	 * The beginnings of what the cores say; a text of theirs with one of them is a code.
	 */
	private static final List<String> SAID = List.of("reason.", "advised.", "decided.", "opens.", "criterion.",
			"cause.", "next.", "stage.", "span.", "modified.", "plan.", "need.", "matter.", "report.", "clearance.",
			"slip.", "withdraw.", "level.", "lift.", "merge.", "entry.", "session.", "morning.", "rules.", "people.",
			"invite.", "join.", "programme.", "programmeFile.", "importFile.", "statement.", "race-word.",
			"known-symptom.", "day.", "typed.", "name.", "account.");

	/** Texts that codes begin with, and a code that is looked for in old rows only. */
	private static final Set<String> BEGUN = Set.of("advised.clinician", "reason.rhr", "reason.sustained-rise");

	private final Properties sentences = new Properties();

	@ParameterizedTest
	@ValueSource(strings = { "/messages.properties", "/messages_de.properties" })
	void namesEveryMemberOfAnEnum(String file) {
		read(file);
		Set<String> without = new TreeSet<>();
		ENUMS.forEach((prefix, type) -> Arrays.stream(type.getEnumConstants())
			.map((one) -> prefix + one.name())
			.filter((key) -> !this.sentences.containsKey(key))
			.forEach(without::add));
		assertThat(without).isEmpty();
	}

	@ParameterizedTest
	@ValueSource(strings = { "/messages.properties", "/messages_de.properties" })
	void saysEveryCodeThatStandsInTheProgram(String file) {
		read(file);
		Set<String> codes = new TreeSet<>();
		texts((owner, text) -> {
			if (text.matches("[a-z][A-Za-z-]*(\\.[A-Za-z0-9_-]+)+") && SAID.stream().anyMatch(text::startsWith)) {
				codes.add(text);
			}
		});
		assertThat(codes).hasSizeGreaterThan(300).contains("reason.hold", "reason.rhr-high", "programme.week.unknown");
		assertThat(codes).filteredOn((code) -> !isSaid(code)).isEmpty();
	}

	/** The names of rule fields stand without the beginning that all of them have. */
	private boolean isSaid(String code) {
		return Stream.of("", "rules.field.").anyMatch((before) -> this.sentences.containsKey(before + code))
				|| BEGUN.contains(code) || code.endsWith(".csv");
	}

	@ParameterizedTest
	@ValueSource(strings = { "/messages.properties", "/messages_de.properties" })
	void tellsEveryCriterionInFull(String file) {
		read(file);
		Set<String> criteria = new TreeSet<>();
		calls(Criterion.class, criteria);
		assertThat(criteria).contains("no-hold", "symptom-free", "quiet", "hrv", "effort", "runs");
		Set<String> without = new TreeSet<>();
		for (String code : criteria) {
			Stream.of("criterion." + code, "criterion." + code + ".required", "opens." + code)
				.filter((key) -> !this.sentences.containsKey(key))
				.forEach(without::add);
			if (!this.sentences.containsKey("criterion." + code + ".observed")) {
				Stream.of(CriterionState.MET, CriterionState.NOT_MET)
					.map((state) -> "criterion." + code + "." + state)
					.filter((key) -> !this.sentences.containsKey(key))
					.forEach(without::add);
			}
		}
		assertThat(without).isEmpty();
	}

	@Test
	void namesTheCausesOfHoldsThatAreNoSymptom() {
		Set<String> causes = new TreeSet<>();
		texts((owner, text) -> {
			if (owner.equals("Holds") && text.matches("[A-Z]+(_[A-Z]+)*")) {
				causes.add(text);
			}
		});
		assertThat(causes).contains("BY_HAND", "HOSPITAL", "FAINTING");
		for (String file : List.of("/messages.properties", "/messages_de.properties")) {
			read(file);
			assertThat(causes).as(file)
				.allMatch((code) -> Stream.of("symptom.", "after.", "kind.", "cause.")
					.anyMatch((prefix) -> this.sentences.containsKey(prefix + code)));
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "/messages.properties", "/messages_de.properties" })
	void saysWhatTheTraceKeeps(String file) {
		read(file);
		Set<String> without = new TreeSet<>();
		for (TraceSubject what : TraceSubject.values()) {
			if (Arrays.stream(TraceAction.values())
				.noneMatch((action) -> this.sentences.containsKey("trace." + action + "." + what))) {
				without.add(what.name());
			}
		}
		assertThat(without).isEmpty();
	}

	private void read(String file) {
		this.sentences.clear();
		try (InputStreamReader text = new InputStreamReader(
				Objects.requireNonNull(EveryCodeTest.class.getResourceAsStream(file)), StandardCharsets.UTF_8)) {
			this.sentences.load(text);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/** Every text in every compiled class, with the simple name of the class. */
	private static void texts(BiConsumer<String, String> with) {
		visit((owner) -> new MethodVisitor(Opcodes.ASM9) {
			@Override
			public void visitLdcInsn(Object value) {
				if (value instanceof String text) {
					with.accept(owner, text);
				}
			}
		});
	}

	/** The first text put on the stack for each call of a class's makers. */
	private static void calls(Class<?> made, Set<String> firsts) {
		String name = made.getName().replace('.', '/');
		visit((owner) -> new MethodVisitor(Opcodes.ASM9) {

			private final List<String> texts = new ArrayList<>();

			@Override
			public void visitLdcInsn(Object value) {
				if (value instanceof String text) {
					this.texts.add(text);
				}
			}

			@Override
			public void visitMethodInsn(int opcode, String type, String method, String descriptor, boolean face) {
				if (opcode == Opcodes.INVOKESTATIC && type.equals(name) && descriptor.startsWith("(Ljava/lang/String;")
						&& !owner.equals(made.getSimpleName())) {
					this.texts.stream().filter((text) -> text.matches("[a-z]+(-[a-z]+)*")).forEach(firsts::add);
				}
				if (type.equals(name)) {
					this.texts.clear();
				}
			}
		});
	}

	private static void visit(java.util.function.Function<String, MethodVisitor> method) {
		try (Stream<Path> files = Files.walk(classes())) {
			for (Path file : files.filter((one) -> one.toString().endsWith(".class")).toList()) {
				String name = file.getFileName().toString().replaceAll("(\\$.*)?\\.class$", "");
				new ClassReader(Files.readAllBytes(file)).accept(new ClassVisitor(Opcodes.ASM9) {
					@Override
					public MethodVisitor visitMethod(int access, String of, String descriptor, String signature,
							String[] exceptions) {
						return method.apply(name);
					}
				}, ClassReader.SKIP_DEBUG);
			}
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static Path classes() {
		try {
			return Path.of(Message.class.getProtectionDomain().getCodeSource().getLocation().toURI());
		}
		catch (URISyntaxException ex) {
			throw new IllegalStateException(ex);
		}
	}

}
