package org.fallow.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.team.People;
import org.fallow.team.Team;

/**
 * A database of squads whose coaches can sign in, among many other athletes, made once
 * and kept in its folder.
 */
final class Federation {

	static final String PASSWORD = "a long enough sentence";

	/** For loading: no log of what can be made again, and nobody tidies up meanwhile. */
	private static final List<String> LOADING = List.of("wal_level = minimal", "max_wal_senders = 0",
			"max_wal_size = '16GB'", "checkpoint_timeout = '1h'", "maintenance_work_mem = '1GB'",
			"max_parallel_maintenance_workers = 2", "autovacuum = off");

	private final Path home;

	private final List<Integer> squads;

	private final int others;

	/**
	 * A federation.
	 * @param home folder it is kept in
	 * @param squads sizes of the squads whose coaches can sign in
	 * @param others further athletes, in teams of mixed sizes
	 */
	Federation(Path home, List<Integer> squads, int others) {
		this.home = home;
		this.squads = squads;
		this.others = others;
	}

	static String coachOf(int squad) {
		return "coach" + squad + "@club.example";
	}

	/** The day on which it stands still, and makes it where it is not there. */
	LocalDate day() throws IOException {
		Path made = this.home.resolve("made-on");
		if (Files.exists(made)) {
			return LocalDate.parse(Files.readString(made).strip());
		}
		LocalDate today = LocalDate.now(ZoneOffset.UTC);
		RunningFallow.start(this.home, today).close();
		Path settings = this.home.resolve("database").resolve("postgresql.conf");
		String before = Files.readString(settings);
		Files.write(settings, LOADING, StandardOpenOption.APPEND);
		try (RunningFallow fallow = RunningFallow.start(this.home, today)) {
			FederationRows rows = new FederationRows(fallow.owner(), today);
			FederationModels models = new FederationModels(fallow, today);
			Purpose.OPERATION.run(() -> {
				rows.begin(models.make());
				this.squads.forEach((size) -> squad(fallow, models, rows, size));
			});
			rows.others(this.others);
			rows.load();
		}
		Files.writeString(settings, before + "autovacuum = off\n");
		Files.writeString(made, today.toString());
		return today;
	}

	private static void squad(RunningFallow fallow, FederationModels models, FederationRows rows, int size) {
		People people = fallow.bean(People.class);
		Team team = people.addTeam(people.foundClub("Club of " + size).id(), "Squad of " + size, ZoneOffset.UTC);
		UUID group = people.findOrAddGroup(team.id(), "Track").id();
		PersonId coach = people.addCoach(team.id(), "Coach of " + size);
		fallow.bean(Accounts.class).open(coach, coachOf(size), PASSWORD);
		models.program(group, coach);
		rows.squad(team, group, size);
	}

}
