package org.fallow.exchange.imports;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.ImportField;
import org.fallow.team.NameKey;
import org.fallow.team.NameMatch;
import org.fallow.team.NamesInFile;
import org.fallow.team.NewAthlete;
import org.fallow.team.Roster;
import org.fallow.team.Rosters;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Finds out before an import runs whom its file names, so that nobody is added twice or
 * taken for somebody else.
 */
@Service
@Transactional
public class ImportPeople {

	/** More people than any club has: then it is another column. */
	public static final int MOST = 20_000;

	private static final int LISTED = 19;

	private static final int ASKED = 100;

	private static final int TOKEN = 16;

	private final ImportRows rows;

	private final Rosters rosters;

	ImportPeople(ImportRows rows, Rosters rosters) {
		this.rows = rows;
		this.rosters = rosters;
	}

	/**
	 * Whom a file names.
	 * @param job the job, which waits
	 * @param mapping which column is which, the person's among them
	 * @return the people; empty if they are more than {@link #MOST}
	 */
	public Optional<FilePeople> of(ImportJob job, ColumnMapping mapping) {
		Integer column = Objects.requireNonNull(mapping.columns().get(ImportField.PERSON));
		this.rows.nameThePeople(job.id(), column);
		List<String> names = this.rows.people(job.id(), null, MOST + 1);
		return (names.size() > MOST) ? Optional.empty() : Optional.of(sorted(job.teamId(), names));
	}

	private FilePeople sorted(UUID team, List<String> names) {
		Roster roster = this.rosters.of(team);
		Sorting sorting = new Sorting(roster, this.rosters.closed(team, names));
		names.stream()
			.filter((name) -> !NameKey.of(name).isEmpty() && name.length() <= NewAthlete.LONGEST_NAME)
			.forEach(sorting::sort);
		return sorting.done();
	}

	/**
	 * What stands for a name in a form.
	 * @param name the name as the file has it
	 * @return letters and digits, the same for the same name only
	 */
	static String token(String name) {
		try {
			byte[] digest = MessageDigest.getInstance("SHA-256").digest(name.getBytes(StandardCharsets.UTF_8));
			return HexFormat.of().formatHex(digest).substring(0, TOKEN);
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException(ex);
		}
	}

	/** Puts each name where it belongs. */
	private static final class Sorting {

		private final Roster roster;

		private final Set<String> closed;

		private final List<String> spelled = new ArrayList<>();

		private final List<String> refused = new ArrayList<>();

		private final Map<String, List<Roster.Entry>> others = new TreeMap<>();

		private int recognised;

		Sorting(Roster roster, Set<String> closed) {
			this.roster = roster;
			this.closed = closed;
		}

		void sort(String name) {
			NameMatch match = this.roster.match(name);
			if (match instanceof NameMatch.One one) {
				this.recognised++;
				NameKey written = NameKey.of(one.member().name());
				if (written.bare().equals(NameKey.of(name).bare()) && !one.member().name().equals(name)) {
					this.spelled.add(name + " \u2192 " + one.member().told());
				}
			}
			else if (match instanceof NameMatch.Nobody && !this.closed.contains(name)) {
				this.others.put(name, this.roster.near(name));
			}
			else {
				this.refused.add(name);
			}
		}

		FilePeople done() {
			NamesInFile inFile = new NamesInFile(this.others.keySet());
			List<FilePeople.Near> near = new ArrayList<>();
			List<String> unknown = new ArrayList<>();
			this.others.forEach((name, members) -> {
				List<String> alike = inFile.near(name);
				if (members.isEmpty() && alike.isEmpty()) {
					unknown.add(name);
				}
				else {
					near.add(new FilePeople.Near(token(name), name, members, alike));
				}
			});
			List<FilePeople.Near> asked = near.subList(0, Math.min(ASKED, near.size()));
			return new FilePeople(this.recognised, this.spelled.subList(0, Math.min(LISTED, this.spelled.size())),
					asked, near.size() - asked.size(), FilePeople.Names.of(unknown, LISTED),
					FilePeople.Names.of(this.refused, LISTED), this.roster.size() == 0);
		}

	}

}
